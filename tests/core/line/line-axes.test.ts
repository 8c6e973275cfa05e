import { readFileSync } from 'node:fs';
import { alignLine, jointAngles, lineAxes, type AxisMeasures, type Measure } from '@sternline/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEGREE, lineOf } from './line-of.js';

/** Points differenced in 30 digits, least squares and bounded quasi-Newton: see axes.py beside the file. */
interface Case {
  readonly values: readonly number[];
  readonly tolerances: readonly number[];
  readonly angles: readonly {
    readonly value: number;
    readonly least: number;
    readonly greatest: number;
    readonly reach: number | null;
  }[];
  readonly centre?: readonly number[];
  readonly gap?: number;
  readonly length?: number;
}

const cases = JSON.parse(
  readFileSync(new URL('../../reference/line/axes.json', import.meta.url), 'utf8'),
) as readonly Case[];

function measuresOf({ values, tolerances }: Pick<Case, 'values' | 'tolerances'>): AxisMeasures {
  const measure = (i: number): Measure => ({ value: values[i]!, tolerance: tolerances[i]! });
  const station = (i: number) => ({ at: measure(i), height: measure(i + 1), offset: measure(i + 2) });
  return {
    motor: [station(0), station(3)],
    tube: [station(6), station(9)],
    ...(values.length > 12 ? { joints: { motor: measure(12), tube: measure(13) } } : {}),
  };
}

const exactly = (value: number): Measure => ({ value, tolerance: 0 });

describe('lineAxes', () => {
  it.each(cases.map((row, i) => [i, row] as const))(
    'agrees with points differenced in space, case %i',
    (_, row) => {
      const got = lineAxes(measuresOf(row));
      expect(got.jointAngles).toHaveLength(row.angles.length);
      row.angles.forEach(({ value, least, greatest, reach }, i) => {
        const angle = got.jointAngles[i]!;
        expect(Math.abs(angle.value - value)).toBeLessThan(1e-14);
        // The reference stops at a slope of about 1e-9 rad; where the least is none at all, at about 1e-6.
        expect(Math.abs(angle.least - least)).toBeLessThan(least < 1e-5 ? 2e-6 : 2e-8);
        expect(Math.abs(angle.greatest - greatest)).toBeLessThan(1e-9);
        // The law of first order, which holds to the share that the tolerances are of the measures.
        const share = row.tolerances[0]! < 1e-5 ? 1e-3 : 0.1;
        if (reach !== null) expect(Math.abs(angle.tolerance / reach - 1)).toBeLessThan(share);
      });
      if (row.centre) {
        row.centre.forEach((part, i) => {
          expect(Math.abs(got.meeting!.centre![i]! - part)).toBeLessThan(1e-12);
        });
        expect(got.jointCentres).toEqual([got.meeting!.centre]);
      }
      if (row.gap !== undefined) expect(Math.abs(got.meeting!.gap.value - row.gap)).toBeLessThan(1e-13);
      if (row.length !== undefined) {
        expect(Math.abs(got.intermediate!.length.value - row.length)).toBeLessThan(1e-15 * 4);
        expect(got.jointCentres.map(([x]) => x)).toEqual([row.values[12], row.values[13]]);
      }
      expect(got.assumed).toEqual([]);
    },
  );

  // β = atan √(tan²βv + tan²βh): 2.5° and 5.5° give 6.0352°, https://manualslib.fr/manual/109398/Vetus-Vdr-2-10-25.html?page=12
  // (6° there); 15° and 7° give 16.4225° (16.5° by graph), the root of the squares would give 16.55°.
  it.each([
    [2.5, 5.5, 6.0352],
    [15, 7, 16.4225],
    [-11.5, 12, 16.3956],
    [20, 15, 24.32124],
  ])('joins %f° in height and %f° in plan to the angle in space', (up, across, angle) => {
    const got = lineAxes({
      motor: [
        { at: exactly(0), height: exactly(0), offset: exactly(0) },
        { at: exactly(1), height: exactly(0), offset: exactly(0) },
      ],
      tube: [
        { at: exactly(2), height: exactly(0), offset: exactly(0) },
        {
          at: exactly(3),
          height: exactly(Math.tan(up * DEGREE)),
          offset: exactly(Math.tan(across * DEGREE)),
        },
      ],
    });
    expect(Math.abs(got.jointAngles[0]!.value / DEGREE - angle)).toBeLessThan(6e-5);
    expect(Math.abs(got.tube.plan.value / DEGREE - across)).toBeLessThan(1e-12);
    expect(got.jointAngles[0]!.tolerance).toBe(0);
  });

  // 0.2 mm over a 40 mm coupling is 0.29°; 1 mm of offset over 30 mm between joint centres is 1.9° at each. Derived.
  it('gives the shed’s figures', () => {
    const flat = (at: number, height: number) => ({ at: exactly(at), height: exactly(height) });
    const bent = lineAxes({ motor: [flat(0, 0), flat(0.04, 0)], tube: [flat(0.05, 0), flat(0.09, 0.0002)] });
    expect(Math.abs(bent.jointAngles[0]!.value / DEGREE - 0.29)).toBeLessThan(0.005);
    const offset = lineAxes({
      motor: [flat(0, 0), flat(0.04, 0)],
      tube: [flat(0.1, 0.001), flat(0.4, 0.001)],
      joints: { motor: exactly(0.05), tube: exactly(0.08) },
    });
    offset.jointAngles.forEach(({ value }) => {
      expect(Math.abs(value / DEGREE - 1.9)).toBeLessThan(0.02);
    });
  });

  const measure = (from: number, to: number): fc.Arbitrary<Measure> =>
    fc.record({
      value: fc.double({ min: from, max: to, noNaN: true }),
      tolerance: fc.double({ min: 0, max: 1e-3, noNaN: true }),
    });
  const station = (from: number) =>
    fc.record({
      at: measure(from, from + 0.02),
      height: measure(-0.05, 0.05),
      offset: measure(-0.05, 0.05),
    });
  const measured = fc.record({
    motor: fc.tuple(station(0), station(0.08)),
    tube: fc.tuple(station(0.2), station(0.5)),
  });

  it('holds every joint angle that measures within their tolerances give', () => {
    fc.assert(
      fc.property(
        measured,
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 12, maxLength: 12 }),
        (measures, shares) => {
          const got = lineAxes(measures).jointAngles[0]!;
          let next = 0;
          const moved = ({ value, tolerance }: Measure): Measure =>
            exactly(value + tolerance * shares[next++]!);
          const [motor, tube] = ([measures.motor, measures.tube] as const).map((stations) =>
            stations.map(({ at, height, offset }) => ({
              at: moved(at),
              height: moved(height),
              offset: moved(offset),
            })),
          ) as unknown as [AxisMeasures['motor'], AxisMeasures['tube']];
          const { value } = lineAxes({ motor, tube }).jointAngles[0]!;
          expect(value).toBeGreaterThan(got.least - 1e-6);
          expect(value).toBeLessThan(got.greatest + 1e-6);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('does not mind the order of the stations, a shift of the datum, or port for starboard', () => {
    fc.assert(
      fc.property(measured, ({ motor, tube }) => {
        const plain = lineAxes({ motor, tube });
        const swapped = lineAxes({ motor: [motor[1], motor[0]], tube: [tube[1], tube[0]] });
        expect(swapped).toEqual(plain);
        const mirror = (s: (typeof motor)[0]) => ({ ...s, offset: { ...s.offset, value: -s.offset.value } });
        const mirrored = lineAxes({
          motor: [mirror(motor[0]), mirror(motor[1])],
          tube: [mirror(tube[0]), mirror(tube[1])],
        });
        expect(Math.abs(mirrored.jointAngles[0]!.value - plain.jointAngles[0]!.value)).toBeLessThan(1e-14);
        expect(mirrored.tube.plan.value).toBe(-plain.tube.plan.value);
      }),
      { numRuns: 10 },
    );
  });
});

describe('lineAxes with a view missing', () => {
  const heights = (at: number, height: number) => ({ at: exactly(at), height: exactly(height) });
  const both = (at: number, height: number, offset: number) => ({
    ...heights(at, height),
    offset: exactly(offset),
  });

  it('takes axes without offsets as parallel to the centre line, and says so', () => {
    const got = lineAxes({
      motor: [heights(0, 0.04), heights(0.08, 0.04)],
      tube: [heights(0.14, 0.03), heights(0.44, -0.045)],
    });
    expect(got.tube.plan.value).toBe(0);
    expect(got.assumed).toEqual([
      {
        code: 'offsets-missing',
        sentence:
          'No offsets were given: both axes are taken as parallel to the centre line, in line with the keel.',
      },
    ]);
    // Height 0.03 falls by a quarter: level with 0.04 at 0.14 − 0.04.
    expect(Math.abs(got.jointCentres[0]![0] - 0.1)).toBeLessThan(1e-15);
    expect(got.meeting!.gap.value).toBe(0);
  });

  it('lets an axis that was measured in one view meet the other', () => {
    const got = lineAxes({
      motor: [heights(0, 0.04), heights(0.08, 0.04)],
      tube: [both(0.14, 0.03, 0.01), both(0.44, -0.045, 0.04)],
    });
    expect(got.motor.plan.value).toBe(0);
    expect(got.meeting!.gap.value).toBeLessThan(1e-16);
    // The tube's offset grows by a tenth: 0.006 where the axes meet at 0.1.
    expect(Math.abs(got.jointCentres[0]![1] - 0.006)).toBeLessThan(1e-15);
    expect(got.assumed.map(({ code }) => code)).toEqual(['motor-offsets-missing']);
    expect(got.assumed[0]!.sentence).toBe(
      'No offsets of the motor’s axis were given: it is taken as parallel to the centre line, and as meeting the tube’s axis in the plan view.',
    );
  });

  it('says it of heights and of the tube as well', () => {
    const offsets = (at: number, offset: number) => ({ at: exactly(at), offset: exactly(offset) });
    const got = lineAxes({
      motor: [both(0, 0.04, 0), both(0.08, 0.05, 0)],
      tube: [offsets(0.14, 0.01), offsets(0.44, 0.06)],
    });
    expect(got.tube.elevation.value).toBe(0);
    expect(got.assumed.map(({ code }) => code)).toEqual(['tube-heights-missing']);
    const flat = lineAxes({
      motor: [offsets(0, 0), offsets(0.08, 0)],
      tube: [offsets(0.14, 0.01), offsets(0.44, 0.06)],
    });
    expect(flat.assumed.map(({ code }) => code)).toEqual(['heights-missing']);
  });

  it('has no joint centre for parallel axes, and gives the distance between them', () => {
    const got = lineAxes({
      motor: [both(0, 0.04, 0), both(0.08, 0.04, 0)],
      tube: [both(0.14, 0.043, 0.004), both(0.44, 0.043, 0.004)],
    });
    expect(got.jointCentres).toEqual([]);
    expect(got.meeting!.centre).toBeUndefined();
    expect(Math.abs(got.meeting!.gap.value - 0.005)).toBeLessThan(1e-15);
    expect(got.jointAngles[0]!.value).toBe(0);
  });
});

describe('lineAxes refuses', () => {
  const station = (at: number) => ({ at: exactly(at), height: exactly(0.01) });
  const tube = [station(0.2), station(0.5)] as const;
  const ask = (measures: Partial<AxisMeasures>) => () =>
    lineAxes({ motor: [station(0), station(0.1)], tube, ...measures });

  it('a length that is none', () => {
    expect(ask({ motor: [station(0), station(NaN)] })).toThrow(
      new RangeError('lineAxes: motor[1].at.value must be a finite number, got NaN'),
    );
    const height = { value: 0.01, tolerance: -1 };
    expect(ask({ tube: [{ ...station(0.2), height }, station(0.5)] })).toThrow(
      new RangeError('lineAxes: tube[0].height.tolerance must be a finite number of at least 0, got -1'),
    );
  });

  it('a view at one station only', () => {
    expect(ask({ motor: [{ ...station(0), offset: exactly(0) }, station(0.1)] })).toThrow(
      new RangeError('lineAxes: motor[1].offset must be given at both stations or at neither, got undefined'),
    );
  });

  it('stations that fix no direction', () => {
    expect(ask({ motor: [station(0.1), station(0.1)] })).toThrow(
      new RangeError(
        'lineAxes: motor must be two stations further apart than the tolerances of both (0 m), got 0',
      ),
    );
  });

  it('joint centres out of order', () => {
    expect(ask({ joints: { motor: exactly(0.2), tube: exactly(0.1) } })).toThrow(
      new RangeError(
        'lineAxes: joints.tube must be aft of joints.motor by more than the tolerances of both (0 m), got -0.1',
      ),
    );
  });
});

describe('alignLine', () => {
  const axes = (two: boolean) =>
    lineAxes({
      motor: [
        { at: exactly(0), height: exactly(0.04), offset: exactly(0) },
        { at: exactly(0.08), height: exactly(0.041), offset: exactly(0.002) },
      ],
      tube: [
        { at: exactly(0.16), height: exactly(0.03), offset: exactly(0.01) },
        { at: exactly(0.46), height: exactly(-0.04), offset: exactly(0.03) },
      ],
      ...(two ? { joints: { motor: exactly(0.09), tube: exactly(0.15) } } : {}),
    });

  it('gives the line the angles that were measured, rigid pieces with them', () => {
    for (const two of [false, true]) {
      const measured = axes(two);
      const plain = two ? lineOf([{}, {}, {}, {}], ['universal', 'rigid', 'flexible']) : lineOf([{}, {}]);
      const got = jointAngles(alignLine(plain, measured));
      const bends = got.filter((_, i) => plain.joints[i]!.kind !== 'rigid');
      bends.forEach((angle, i) => {
        expect(Math.abs(angle - measured.jointAngles[i]!.value)).toBeLessThan(1e-15 * 4);
      });
      if (two) expect(got[1]).toBe(0);
    }
  });

  it('leaves the line that it was given as it was', () => {
    const line = lineOf([{}, {}]);
    const before = structuredClone(line);
    alignLine(line, axes(false));
    expect(line).toEqual(before);
  });

  it('refuses a line that bends elsewhere', () => {
    expect(() => alignLine(lineOf([{}, {}, {}]), axes(false))).toThrow(
      new RangeError('alignLine: line must be a line that bends at 1 joint, as the axes do, got 2'),
    );
    expect(() => alignLine(lineOf([{}, {}]), axes(true))).toThrow(
      new RangeError('alignLine: line must be a line that bends at 2 joints, as the axes do, got 1'),
    );
  });
});
