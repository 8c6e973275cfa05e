import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { propellerCoefficients } from '@sternline/core';

interface Row {
  readonly blades: number;
  readonly areaRatio: number;
  readonly pitchRatio: number;
  readonly advance: number;
  readonly thrust: number;
  readonly torque: number;
}

const reference = JSON.parse(
  readFileSync(new URL('../../reference/drive/running.json', import.meta.url), 'utf8'),
) as { coefficients: Row[] };

describe('propellerCoefficients', () => {
  it('sums the terms as numpy does', () => {
    // tests/reference/drive/running.py, terms of Oosterveld and van Oossanen (1975) from public listings
    expect(reference.coefficients).toHaveLength(84);
    for (const { thrust, torque, ...propeller } of reference.coefficients) {
      const found = propellerCoefficients(propeller);
      expect(found.thrust).toBeCloseTo(thrust, 12);
      expect(found.torque).toBeCloseTo(torque, 12);
    }
  });

  it.each([
    // K_T and 10 K_Q evaluated from the listings on their own, to 5 digits; no printed point was at hand
    [{ blades: 2, areaRatio: 0.3, pitchRatio: 1, advance: 0.4 }, 0.23921, 0.33363],
    [{ blades: 3, areaRatio: 0.5, pitchRatio: 0.8, advance: 0 }, 0.32169, 0.38785],
    [{ blades: 4, areaRatio: 0.55, pitchRatio: 1, advance: 0.8 }, 0.13555, 0.24773],
    [{ blades: 5, areaRatio: 0.75, pitchRatio: 1, advance: 0.8 }, 0.13857, 0.25709],
  ])('%o', (propeller, thrust, torque) => {
    const found = propellerCoefficients(propeller);
    expect(found.thrust).toBeCloseTo(thrust, 5);
    expect(10 * found.torque).toBeCloseTo(torque, 5);
  });

  it('has the efficiency J K_T / (2π K_Q), none at rest', () => {
    const shape = { blades: 4, areaRatio: 0.55, pitchRatio: 1 };
    // B4-55, P/D 1, J 0.8: 0.6967 from K_T and K_Q above by hand
    expect(propellerCoefficients({ ...shape, advance: 0.8 }).efficiency).toBeCloseTo(0.6967, 4);
    expect(propellerCoefficients(shape).efficiency).toBe(0);
  });

  it('refuses a propeller outside the series', () => {
    const shape = { blades: 4, areaRatio: 0.55, pitchRatio: 1 };
    expect(() => propellerCoefficients({ ...shape, blades: 1 })).toThrow(
      'propellerCoefficients: blades must be a whole number from 2 to 7, got 1',
    );
    expect(() => propellerCoefficients({ ...shape, pitchRatio: 1.5 })).toThrow(
      'propellerCoefficients: pitchRatio must be from 0.5 to 1.4, where the series holds',
    );
    expect(() => propellerCoefficients({ ...shape, areaRatio: NaN })).toThrow(
      'propellerCoefficients: areaRatio must be from 0.3 to 1.05',
    );
    expect(() => propellerCoefficients({ ...shape, advance: -0.1 })).toThrow(
      'propellerCoefficients: advance must be a finite number of at least 0, got -0.1',
    );
  });
});
