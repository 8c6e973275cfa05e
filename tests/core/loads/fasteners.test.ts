import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { setScrewHolding, STOCK } from '@sternline/core';
import { checkFastener } from '../../../packages/core/src/loads/check-fastener.js';

const INCH = 0.0254;
const screw = { kind: 'set-screw' } as const;

describe('setScrewHolding', () => {
  it.each([
    // Cup points on 15 HRC: #0 to #4 https://studylib.net/doc/18241577/socket-set-screws-holding-power., the rest Shigley,
    // 9th ed., table 7-4 (from memory); N and N·m
    [0.06, 222.4, 0.113],
    [0.073, 289.1, 0.2034],
    [0.112, 711.7, 0.5649],
    [0.125, 889.6, 1.13],
    [0.19, 2402, 4.067],
    [0.25, 4448, 9.83],
    [0.375, 8896, 32.8],
  ])('of %f in is that of the table', (inches, axial, seatingTorque) => {
    const holding = setScrewHolding({ ...screw, size: inches * INCH }, { shaftDiameter: 0.008 });
    expect(Math.abs(holding.axial / axial - 1)).toBeLessThan(1e-3);
    // printed to three digits
    expect(Math.abs(holding.seatingTorque / seatingTorque - 1)).toBeLessThan(2e-3);
    // torsional = axial × d / 2, the table's own rule
    expect(holding.torque).toBeCloseTo((holding.axial * 0.008) / 2, 12);
    expect(holding.basis).toBe('table');
  });

  it('of a metric size lies between its neighbours', () => {
    const at = (size: number) => setScrewHolding({ ...screw, size }, { shaftDiameter: 0.005 });
    const m3 = at(0.003);
    expect(m3.basis).toBe('interpolated');
    expect(m3.axial).toBeGreaterThan(at(0.112 * INCH).axial);
    expect(m3.axial).toBeLessThan(at(0.125 * INCH).axial);
    // http://www.ruland.com/ti_hardware_torque_charts_metal.asp: M3 0.92 N·m
    expect(m3.recommendedTorque).toBe(0.92);
    expect(at(0.001).basis).toBe('extrapolated');
    expect(at(0.012).basis).toBe('extrapolated');
  });

  it.each([
    // http://www.ruland.com/ti_hardware_torque_charts_metal.asp
    [0.002, 0.21],
    [0.0025, 0.57],
    [0.003, 0.92],
    [0.004, 2.2],
    [0.005, 4],
    [0.006, 7.2],
  ])('of %f m is seated with no more than the metric table has, %f N·m', (size, torque) => {
    const holding = setScrewHolding({ ...screw, size, seatingTorque: 50 }, { shaftDiameter: 0.01 });
    expect(holding.recommendedTorque).toBe(torque);
    expect(holding.seatingTorque).toBe(torque);
    const plain = setScrewHolding({ ...screw, size }, { shaftDiameter: 0.01 });
    expect(plain.seatingTorque).toBeLessThanOrEqual(torque);
  });

  it('grows with the size without a step, but where a metric size is seated less than its neighbours', () => {
    const metric = [2, 2.5, 3, 4, 5, 6];
    const own = (size: number) => metric.some((one) => Math.abs(one / (1000 * size) - 1) < 2e-3);
    const sizes = fc
      .double({ min: 0.001, max: 0.012, noNaN: true })
      .filter((size) => !own(size) && !own(1.02 * size));
    fc.assert(
      fc.property(sizes, (size) => {
        const force = (one: number) =>
          setScrewHolding({ ...screw, size: one }, { shaftDiameter: 0.02 }).axial;
        expect(force(size * 1.02)).toBeGreaterThan(force(size));
        expect(force(size * 1.02)).toBeLessThan(1.1 * force(size));
      }),
    );
  });

  it('counts seating torque, point, flat and further screws', () => {
    const base = setScrewHolding({ ...screw, size: 0.125 * INCH }, { shaftDiameter: 0.006 });
    const half = setScrewHolding(
      { ...screw, size: 0.125 * INCH, seatingTorque: base.seatingTorque / 2 },
      { shaftDiameter: 0.006 },
    );
    expect(half.axial).toBeCloseTo(base.axial / 2, 9);
    const cone = setScrewHolding({ ...screw, size: 0.125 * INCH }, { shaftDiameter: 0.006, point: 'cone' });
    expect(cone.axial).toBeCloseTo(1.07 * base.axial, 9);
    const flat = setScrewHolding({ ...screw, size: 0.125 * INCH, flat: true }, { shaftDiameter: 0.006 });
    expect(flat.axial).toBe(base.axial);
    expect(flat.torque).toBeCloseTo(1.06 * base.torque, 12);
    const two = setScrewHolding({ ...screw, size: 0.125 * INCH, count: 2 }, { shaftDiameter: 0.006 });
    expect(two.axial).toBeCloseTo(1.3 * base.axial, 9);
  });

  it('counts no more seating torque than is recommended', () => {
    const much = setScrewHolding({ ...screw, size: 0.003, seatingTorque: 50 }, { shaftDiameter: 0.005 });
    expect(much.seatingTorque).toBe(much.recommendedTorque);
  });

  it('turns down what is no set screw, or has no size', () => {
    expect(() => setScrewHolding({ kind: 'clamp' }, { shaftDiameter: 0.005 })).toThrow(
      `setScrewHolding: kind must be 'set-screw', got "clamp"`,
    );
    expect(() => setScrewHolding(screw, { shaftDiameter: 0.005 })).toThrow(
      'setScrewHolding: size must be a finite number greater than 0, got NaN',
    );
    expect(() => setScrewHolding({ ...screw, size: 0.003, count: 0 }, { shaftDiameter: 0.005 })).toThrow(
      'setScrewHolding: count must be a whole number of at least 1, got 0',
    );
    expect(() => setScrewHolding({ ...screw, size: 0.003 }, { shaftDiameter: 0 })).toThrow(
      'setScrewHolding: shaftDiameter must be a finite number greater than 0, got 0',
    );
  });
});

describe('checkFastener', () => {
  const task = { shaftDiameter: 0.005, torque: 0.2, swing: 0.1 };

  it('asks 8 of a screw that may work loose, 4 of a locked one, 2 at rest', () => {
    // https://studylib.net/doc/18241577/socket-set-screws-holding-power.: 1.5 to 2 static, 4 to 8 dynamic
    const fastener = { ...screw, size: 0.003 };
    expect(checkFastener({ ...task, fastener })!.required).toBe(8);
    expect(checkFastener({ ...task, fastener: { ...fastener, threadLock: true } })!.required).toBe(4);
    expect(checkFastener({ ...task, swing: 0, fastener })!.required).toBe(2);
  });

  it('holds where the factor suffices, and otherwise offers what would', () => {
    const loose = checkFastener({ ...task, fastener: { ...screw, size: 0.003 } })!;
    expect(loose.peakTorque).toBeCloseTo(0.3, 12);
    expect(loose.factor).toBeCloseTo(loose.holding.torque / 0.3, 12);
    expect(loose.holds).toBe(false);
    expect(loose.offer).toMatchObject({ size: 0.003, count: 1, flat: false, threadLock: true });
    const { size, count, flat, threadLock, seatingTorque } = loose.offer!;
    const offered = { size, count, flat, threadLock, seatingTorque };
    const again = checkFastener({ ...task, fastener: { ...screw, ...offered } })!;
    expect(again.holds).toBe(true);
    expect(again.offer).toBeUndefined();
  });

  it('goes to a thicker screw, but none too thick for the shaft, and gives up where none would hold', () => {
    const heavy = checkFastener({
      fastener: { ...screw, size: 0.002 },
      shaftDiameter: 0.008,
      torque: 0.9,
      swing: 0.1,
    })!;
    expect(heavy.holds).toBe(false);
    expect(heavy.offer!.size).toBeGreaterThan(0.002);
    expect(STOCK.setScrewSizes).toContain(heavy.offer!.size);
    const hopeless = checkFastener({
      fastener: { ...screw, size: 0.002 },
      shaftDiameter: 0.004,
      torque: 5,
      swing: 1,
    })!;
    expect(hopeless.holds).toBe(false);
    expect(hopeless.offer).toBeUndefined();
  });

  it('does not judge what is no set screw', () => {
    expect(checkFastener({ ...task, fastener: { kind: 'bond' } })).toBeUndefined();
    expect(checkFastener({ ...task, fastener: screw })).toBeUndefined();
  });
});
