import { describe, expect, it } from 'vitest';
import { drillingMarks } from '../../../packages/demo/src/model/drilling-marks.js';

const AXIS = { point: [0.14, 0.05, 0.03], direction: [300, 0, -75] } as const;

describe('drillingMarks', () => {
  it('marks a bulkhead on the axis, with an upright oval', () => {
    const [mark] = drillingMarks(AXIS, { tubeDiameter: 0.008, bulkheads: [0.2] });
    // 0.03 − 0.06 / 4, derived; the hole is longer by 1 / cos(atan ¼).
    expect(mark!.mark.height).toBeCloseTo(0.015, 12);
    expect(mark!.mark.offset).toBeCloseTo(0.05, 12);
    expect(2 * mark!.hole!.semiMajor).toBeCloseTo(0.008 * Math.hypot(1, 0.25), 12);
    expect(2 * mark!.hole!.semiMinor).toBeCloseTo(0.008, 12);
  });

  it('finds where the tube leaves a flat bottom', () => {
    const marks = drillingMarks(AXIS, { bulkheads: [], hull: { at: 0.2, height: 0 } });
    // Level at 0: 0.03 lower is 0.12 farther aft.
    expect(marks[0]!.mark.at).toBeCloseTo(0.26, 12);
    expect(marks[0]!.hole).toBeUndefined();
  });

  it('leaves out a hull that is not complete, or that the tube runs along', () => {
    expect(drillingMarks(AXIS, { bulkheads: [], hull: { at: 0.2 } })).toEqual([]);
    const along = { at: 0.2, height: 0, riseAft: Math.atan(-0.25) };
    expect(drillingMarks(AXIS, { bulkheads: [], hull: along })).toEqual([]);
  });
});
