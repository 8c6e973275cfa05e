import { describe, expect, it } from 'vitest';
import { comparableTrials, historyTable } from '../../../packages/demo/src/model/trial-history.js';
import type { AnalysedTrial } from '../../../packages/demo/src/model/trial-history.js';

function entry(
  id: string,
  speed: number,
  more: { lineId?: string; unit?: string; known?: boolean } = {},
): AnalysedTrial {
  const { lineId = 'line', unit = 'm/s²', known = true } = more;
  const orders = [{ order: 1, seen: true, amplitude: 0.2 * speed, amplitudeError: 0.01, unit }];
  return {
    trial: { id, name: id, lineId, ...(known ? { speed } : {}) },
    analysis: { speed, levels: [{ unit, rms: 0.5 }], diagnosis: { orders } },
  } as unknown as AnalysedTrial;
}

describe('the line’s own history', () => {
  const open = entry('now', 100);

  it('stands beside trials of the same line, quantity and about the same speed', () => {
    const others = [
      open,
      entry('near', 103),
      entry('fast', 120),
      entry('other line', 100, { lineId: 'b' }),
      entry('sound', 100, { unit: 'full scale' }),
      entry('unknown', 100, { known: false }),
    ];
    expect(comparableTrials(open, others).map(({ trial }) => trial.id)).toEqual(['near']);
  });

  it('shows the orders that the trial on show has', () => {
    const table = historyTable(open, [entry('near', 103)], 'metric');
    expect(table.columns).toEqual(['Trial', 'Speed', 'rms, m/s²', '1×, m/s²']);
    expect(table.rows.map((row) => [row[0], row[3]])).toEqual([
      ['now (this one)', '20.0'],
      ['near', '20.6'],
    ]);
  });
});
