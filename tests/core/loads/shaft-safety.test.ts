import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exampleLine, findMaterial, shaftSafety } from '@sternline/core';
import { shaftOf, steel } from '../../support/lines.js';

const POUND_INCH = 0.112984829;
const KSI = 6894757.293;

describe('shaftSafety', () => {
  it('of Shigley, example 7-1: 1.62 by DE-Goodman', () => {
    // Budynas and Nisbett, "Shigley's Mechanical Engineering Design", 9th ed., example 7-1 (from memory, recomputed by hand):
    // 1.1 in, M_a 1260 and T_m 1100 lbf·in, S_ut 105 kpsi, K_f 1.58, K_fs 1.37; S_e 29.3 kpsi, 1/n = 0.615.
    const shaft = shaftOf({ outerDiameter: 1.1 * 0.0254, material: { ...steel, yieldStrength: 82 * KSI } });
    const { fatigueFactor, enduranceLimit } = shaftSafety(shaft, {
      alternatingBending: 1260 * POUND_INCH,
      torque: 1100 * POUND_INCH,
      bendingNotch: 1.58,
      torsionNotch: 1.37,
      tensileStrength: 105 * KSI,
    });
    // its size factor in inches, 0.879 d^−0.107, is rounded apart from that in millimetres
    expect(Math.abs(enduranceLimit / KSI / 29.3 - 1)).toBeLessThan(3e-3);
    expect(fatigueFactor).toBeCloseTo(1.62, 2);
  });

  it('takes an end-milled keyseat for what is not told: 2.14 in bending, 3.0 in shear', () => {
    // Shigley, table 7-1, r/d 0.02 (from memory). By hand, 5 mm, 105 kpsi = 723.950 MPa:
    // S_e = 4.51·723.950^−0.265·1.24·5^−0.107·0.814·361.975 = 242.264 MPa;
    // σ_a = 2.14·32·0.1/πd³ = 17.4383 MPa, √3 τ_m = √3·3·16·0.2/πd³ = 42.3421 MPa
    const { fatigueFactor } = shaftSafety(shaftOf(), {
      alternatingBending: 0.1,
      torque: 0.2,
      tensileStrength: 105 * KSI,
    });
    expect(fatigueFactor).toBeCloseTo(7.6647, 3);
  });

  it('knows the strengths of the catalogue, and takes yield for those of others', () => {
    const load = { alternatingBending: 0.1, torque: 0.2 };
    const known = shaftSafety(shaftOf({ material: findMaterial('stainless') }), load);
    expect(known.tensileStrength).toBe(500e6);
    const own = shaftSafety(shaftOf({ material: { ...steel, yieldStrength: 300e6 } }), load);
    expect(own.tensileStrength).toBe(300e6);
    expect(own.source).toContain('yield');
  });

  it('falls with every load, and scales with the third power of size', () => {
    const load = { alternatingBending: 0.1, steadyBending: 0.05, torque: 0.2, torqueSwing: 0.1 };
    const factor = (part: Partial<typeof load>) => shaftSafety(shaftOf(), { ...load, ...part }).fatigueFactor;
    for (const key of Object.keys(load) as (keyof typeof load)[])
      expect(factor({ [key]: 2 * load[key] })).toBeLessThan(factor({}));
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 5, noNaN: true }), (scale) => {
        const scaled = Object.fromEntries(Object.entries(load).map(([key, value]) => [key, scale * value]));
        expect(factor(scaled)).toBeCloseTo(factor({}) / scale, 9);
      }),
    );
  });

  it('of yield is that of all loads at once', () => {
    // derived: σ = 32·0.15/πd³, τ = 16·0.3/πd³ at 5 mm: 12.2231 and 12.2231 MPa, √(σ² + 3τ²) = 24.4462
    const { yieldFactor } = shaftSafety(shaftOf(), {
      alternatingBending: 0.1,
      steadyBending: 0.05,
      torque: 0.2,
      torqueSwing: 0.1,
    });
    expect(yieldFactor).toBeCloseTo(250 / 24.4462, 4);
  });

  it('turns down nonsense', () => {
    const [, shaft] = exampleLine().shafts;
    expect(() => shaftSafety(shaft!, { alternatingBending: -1, torque: 0 })).toThrow(
      'shaftSafety: alternatingBending must be a finite number of at least 0, got -1',
    );
    expect(() => shaftSafety(shaft!, { alternatingBending: 0, torque: 0, bendingNotch: 0 })).toThrow(
      'shaftSafety: bendingNotch must be a finite number greater than 0, got 0',
    );
    expect(() => shaftSafety(shaft!, { alternatingBending: 0, torque: 0, tensileStrength: NaN })).toThrow(
      'shaftSafety: tensileStrength must be a finite number greater than 0, got NaN',
    );
  });
});
