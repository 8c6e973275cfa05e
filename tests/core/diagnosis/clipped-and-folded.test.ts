import { describe, expect, it } from 'vitest';
import type { Clipping } from '../../../packages/core/src/recording/types.js';
import { gatherEvidence } from '../../../packages/core/src/diagnosis/gather-evidence.js';
import { measureTraits } from '../../../packages/core/src/diagnosis/measure-traits.js';
import { makeRecording } from '../../support/recordings.js';

const SHAFT = 9;

function traitsOf(rate: number, clipping: readonly Clipping[]) {
  const components = [1, 2, 3, 4, 5].map((order) => ({
    amplitude: 1,
    frequency: order * SHAFT,
    phase: order,
  }));
  const made = makeRecording({
    sampleRate: rate,
    seconds: 20,
    channels: [{ components }],
    noise: 0.1,
    seed: 5,
  });
  const recording = { ...made, sampling: { ...made.sampling, clipping } };
  return measureTraits(gatherEvidence({ recording, speed: 2 * Math.PI * SHAFT }));
}

describe('traits that a recorder makes by itself', () => {
  it('a row of orders and a swell count for nothing on a channel that was cut off', () => {
    expect(traitsOf(400, []).row).toBeGreaterThan(0.5);
    const cut = traitsOf(400, [{ channel: 'x', count: 9, level: 1 }]);
    expect([cut.row, cut.modulation, cut.burst]).toEqual([0, 0, 0]);
  });

  /** derived: at 49.5 Hz and 9 Hz order 4 (36 Hz) folds to 13.5 Hz, which is order 1.5, and order 5 (45 Hz) to 4.5 Hz, order 0.5 */
  it('half orders count for nothing where whole ones fold onto them', () => {
    expect(traitsOf(49.5, []).halves).toBe(0);
  });
});
