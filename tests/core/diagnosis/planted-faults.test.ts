import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { criticalSpeeds } from '@sternline/core';
import { plantedLines, type PlantedFile } from '../../support/planted-trials.js';
import {
  calibration,
  falseAlarms,
  namedFirst,
  scoreSets,
  scoreSingles,
} from '../../support/score-planted.js';

/*
 * Simulated by tests/reference/diagnosis/plant_faults.py, seeds of the kind `test`, on which nothing was fitted. The larger set of
 * the kind `report`, and the table, stand in docs/diagnosis-trials.md.
 */
const file = JSON.parse(
  readFileSync(new URL('../../reference/diagnosis/planted-faults.json', import.meta.url), 'utf8'),
) as PlantedFile;
const singles = scoreSingles(file);
const sets = scoreSets(file);

/** Of every visible fault, told from its rivals or not, by cause: for information beside docs/diagnosis-trials.md. */
function overAllVisible(): { share: number; table: string } {
  const visible = singles.filter((one) => one.visible && one.planted.length > 0);
  const causes = [...new Set(visible.map(({ planted }) => planted[0]!))].sort();
  const rows = causes.map((cause) => {
    const { hits, of } = namedFirst(visible.filter(({ planted }) => planted[0] === cause));
    return `${cause} ${hits} of ${of}`;
  });
  const { hits, of } = namedFirst(visible);
  return { share: hits / of, table: [...rows, `all ${hits} of ${of}`].join(', ') };
}

describe('planted faults, one recording each', () => {
  const fair = singles.filter(({ visible, tellable }) => visible && tellable);

  it('is a set worth the name', () => {
    expect(file.kind).toBe('test');
    expect(fair.length).toBeGreaterThan(80);
    expect(new Set(fair.map(({ planted }) => planted[0])).size).toBeGreaterThanOrEqual(10);
  });

  it('names the cause first in 95 % of those that can be seen and told from their rivals', () => {
    const { hits, of } = namedFirst(fair);
    expect(hits / of).toBeGreaterThanOrEqual(0.95);
  });

  it('over all that can be seen, also those that one recording cannot tell, names more than four in five', () => {
    const { share, table } = overAllVisible();
    expect(share, table).toBeGreaterThan(0.8);
  });

  it('raises no alarm from noise in more than 2 %', () => {
    const { hits, of } = falseAlarms(singles);
    expect(hits).toBeLessThanOrEqual(Math.ceil(0.02 * of));
  });

  it('means its confidence: within 0.05, and what so few findings scatter', () => {
    for (const { count, said, was } of calibration(singles)) {
      // derived: three standard deviations of a share of `count`
      const scatter = 3 * Math.sqrt((said * (1 - said)) / count);
      expect(Math.abs(was - said)).toBeLessThan(0.05 + scatter);
    }
  });
});

describe('planted faults, several trials of a line', () => {
  const seen = sets.filter(({ visible }) => visible);

  it('names the cause first in 95 % of those that can be seen', () => {
    expect(seen.length).toBeGreaterThan(20);
    const { hits, of } = namedFirst(seen);
    expect(hits / of).toBeGreaterThanOrEqual(0.95);
  });

  it('means its confidence: within 0.05, and what so few findings scatter', () => {
    for (const { count, said, was } of calibration(sets)) {
      const scatter = 3 * Math.sqrt((said * (1 - said)) / count);
      expect(Math.abs(was - said)).toBeLessThan(0.05 + scatter);
    }
  });
});

describe('the simulation and the core', () => {
  /** Two beam models written apart: the script's has no gyroscopes and no water inertia. */
  it('agree on the first critical speed of its lines', () => {
    const lines = plantedLines(file);
    for (const [name, hertz] of Object.entries(file.criticals)) {
      const [first] = criticalSpeeds(lines[name]!, { count: 1 });
      expect(Math.abs(first!.speed / (2 * Math.PI) / hertz - 1)).toBeLessThan(0.03);
    }
  });
});
