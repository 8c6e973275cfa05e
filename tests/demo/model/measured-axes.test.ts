import { describe, expect, it } from 'vitest';
import { measuredAxes } from '../../../packages/demo/src/model/measured-axes.js';
import type { MeasuredPoints, PointKey } from '../../../packages/demo/src/model/measures.js';

function points(millimetres: Partial<Record<PointKey, number>>): MeasuredPoints {
  return Object.fromEntries(
    Object.entries(millimetres).map(([key, value]) => [key, { value: value / 1000, tolerance: 0.0005 }]),
  );
}

const SIDE = {
  'motor-1-at': 0,
  'motor-1-height': 40,
  'motor-2-at': 80,
  'motor-2-height': 40,
  'tube-1-at': 140,
  'tube-1-height': 30,
  'tube-2-at': 440,
  'tube-2-height': -45,
} as const;

describe('measuredAxes', () => {
  it('gives the angle of a side view alone, and says what was taken for granted', () => {
    const outcome = measuredAxes(points(SIDE), 1);
    expect(outcome.kind).toBe('axes');
    if (outcome.kind !== 'axes') return;
    // atan(75 / 300), derived.
    expect(outcome.axes.jointAngles[0]!.value).toBeCloseTo(Math.atan(0.25), 9);
    expect(outcome.axes.assumed.map(({ code }) => code)).toEqual(['offsets-missing']);
  });

  it('asks for places and heights where nothing was measured, and for no offsets', () => {
    const outcome = measuredAxes({}, 1);
    expect(outcome).toEqual({
      kind: 'missing',
      missing: [
        'motor-1-at',
        'motor-2-at',
        'tube-1-at',
        'tube-2-at',
        'motor-1-height',
        'motor-2-height',
        'tube-1-height',
        'tube-2-height',
      ],
    });
  });

  it('asks for the other half of a view that was begun', () => {
    expect(measuredAxes(points({ ...SIDE, 'tube-1-offset': 3 }), 1)).toEqual({
      kind: 'missing',
      missing: ['tube-2-offset'],
    });
  });

  it('asks for the joint centres of a line with two joints, and wants them in order', () => {
    expect(measuredAxes(points(SIDE), 2)).toEqual({ kind: 'missing', missing: ['joint-1-at', 'joint-2-at'] });
    const swapped = measuredAxes(points({ ...SIDE, 'joint-1-at': 130, 'joint-2-at': 90 }), 2);
    expect(swapped).toEqual({
      kind: 'problem',
      sentence: 'The second joint must lie aft of the first, by more than both tolerances.',
    });
  });

  it('refuses stations that a ruler cannot tell apart', () => {
    const outcome = measuredAxes(points({ ...SIDE, 'motor-2-at': 0.5 }), 1);
    expect(outcome.kind === 'problem' && outcome.sentence).toMatch(/^The two stations of the motor’s axis/);
  });
});
