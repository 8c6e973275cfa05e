import { describe, expect, it } from 'vitest';
import { findLining, LININGS, STOCK, type Lining } from '@sternline/core';

describe('STOCK', () => {
  it('has the sizes that builders name, ascending', () => {
    // Builders' published accounts: 1.6, 2, 3, 4, 5, 6 and 8 mm; stern tubes of 6 to 10 mm; M3 to M5
    for (const size of [1.6, 2, 3, 4, 5, 6, 8]) expect(STOCK.shaftDiameters).toContain(size / 1000);
    for (const size of [3, 4, 5]) expect(STOCK.setScrewSizes).toContain(size / 1000);
    for (const size of [6, 7, 8, 9, 10])
      expect(STOCK.sternTubes.map(({ outerDiameter }) => outerDiameter)).toContain(size / 1000);
    expect([...STOCK.shaftDiameters].sort((a, b) => a - b)).toEqual(STOCK.shaftDiameters);
    for (const { outerDiameter, innerDiameter } of [...STOCK.shaftTubes, ...STOCK.sternTubes])
      expect(innerDiameter).toBeLessThan(outerDiameter);
  });

  it('cannot be changed', () => {
    expect(() => {
      (STOCK.shaftDiameters as number[]).push(1);
    }).toThrow(TypeError);
  });
});

describe('findLining', () => {
  it.each([
    // Neale, The Tribology Handbook, and Analysis and Design of Machine Elements, table 12.5: low ends; MPa and MPa·m/s
    ['filled PTFE', 7, 0.35],
    ['filled thermoplastic', 10, 0.035],
    ['PTFE on bronze', 140, 1.75],
    ['tin bronze', 8, 15],
    ['lead bronze', 5, 30],
  ])('%s stands %f MPa and %f MPa·m/s', (name, pressure, product) => {
    const { pressureLimit, pressureSpeedLimit } = findLining(name);
    expect(pressureLimit! / 1e6).toBeCloseTo(pressure, 9);
    expect(pressureSpeedLimit! / 1e6).toBeCloseTo(product, 9);
  });

  it('finds by other usual names and spellings', () => {
    expect(findLining('Ball-Bearing')).toBe(LININGS['ball bearing']);
    expect(findLining('porous bronze')).toBe(LININGS['sintered bronze']);
    expect(findLining('POM')).toBe(LININGS.acetal);
  });

  it('gives every limit a source', () => {
    for (const { kind, source, pressureSpeedLimit } of Object.values<Lining>(LININGS)) {
      expect(source).not.toBe('');
      expect(pressureSpeedLimit !== undefined).toBe(kind === 'plain');
    }
  });

  it('names what it has where it has not', () => {
    expect(() => findLining('nyln')).toThrow(
      /^findLining: name must be a lining of the catalogue: sintered bronze, .*did you mean "nylon"\?\), got "nyln"$/,
    );
  });
});
