import { describe, expect, it } from 'vitest';
import { bearingSpans, bushLoad, exampleLine, permissibleUnbalance, sealSpeeds } from '@sternline/core';
import { lineOf, shaftOf } from '../../support/lines.js';

const RPM = Math.PI / 30;

describe('bushLoad', () => {
  it('of 20 N on 6 × 12 mm at 3000 rpm', () => {
    // p = F/(dL), v = πdn/60 by hand: 0.277778 MPa, 0.942478 m/s, 0.261799 MPa·m/s
    const bush = bushLoad({ force: 20, diameter: 0.006, length: 0.012, speed: 3000 * RPM, lining: 'acetal' });
    expect(bush.pressure! / 1e6).toBeCloseTo(0.277778, 6);
    expect(bush.rubbingSpeed).toBeCloseTo(0.942478, 6);
    expect(bush.pressureSpeed! / 1e6).toBeCloseTo(0.261799, 6);
    // acetal 0.105 MPa·m/s (Shigley, from memory): 2.49 times too much
    expect(bush.shares.pressureSpeed).toBeCloseTo(0.261799 / 0.105, 4);
    expect(bush.verdict).toBe('beyond');
  });

  it('judges by what it knows', () => {
    const bush = { force: 5, diameter: 0.005, speed: 300 };
    expect(bushLoad(bush)).toEqual({ rubbingSpeed: 0.75, shares: {}, verdict: 'unknown' });
    expect(bushLoad({ ...bush, lining: 'ball bearing' }).verdict).toBe('rolling');
    expect(bushLoad({ ...bush, lining: 'jelly' }).verdict).toBe('unknown');
    const short = bushLoad({ ...bush, lining: 'sintered bronze' });
    expect(short.pressure).toBeUndefined();
    expect(short.verdict).toBe('within');
  });

  it('turns down nonsense', () => {
    const bush = { force: 5, diameter: 0.005, speed: 300 };
    expect(() => bushLoad({ ...bush, force: -1 })).toThrow(
      'bushLoad: force must be a finite number of at least 0, got -1',
    );
    expect(() => bushLoad({ ...bush, diameter: 0 })).toThrow(
      'bushLoad: diameter must be a finite number greater than 0, got 0',
    );
    expect(() => bushLoad({ ...bush, length: NaN })).toThrow(
      'bushLoad: length must be a finite number greater than 0, got NaN',
    );
    expect(() => bushLoad({ ...bush, speed: Infinity })).toThrow(
      'bushLoad: speed must be a finite number of at least 0, got Infinity',
    );
  });
});

describe('sealSpeeds', () => {
  it('sets the surface speed against each kind', () => {
    // 10 mm at 12 000 rpm: 6.283 m/s by hand
    const within = sealSpeeds({ diameter: 0.01, speed: 12_000 * RPM }).filter((seal) => seal.within);
    expect(within.map(({ name }) => name)).toEqual(['lip seal, oiled']);
    expect(sealSpeeds({ diameter: 0.01, speed: 0 }).every((seal) => seal.within)).toBe(true);
    expect(() => sealSpeeds({ diameter: -1, speed: 0 })).toThrow(
      'sealSpeeds: diameter must be a finite number greater than 0, got -1',
    );
  });
});

describe('bearingSpans', () => {
  it('counts spans and the overhang in diameters', () => {
    const shaft = shaftOf({
      length: 0.318,
      outerDiameter: 0.01,
      supports: [{ at: 0.3 }, { at: 0 }, { at: 0.15 }],
    });
    const spans = bearingSpans(lineOf([shaft]), { speed: 4000 * RPM });
    expect(spans.map(({ kind, verdict }) => `${kind} ${verdict}`)).toEqual([
      'span short',
      'span short',
      'overhang usual',
    ]);
    expect(spans[0]!.diameters).toBeCloseTo(15, 9);
    expect(spans[2]!.diameters).toBeCloseTo(1.8, 9);
    // Germanischer Lloyd, from memory: 8400 √(10/4000) = 420 mm
    expect(spans[0]!.classLength).toBeCloseTo(0.42, 9);
  });

  it.each([
    // 450 √d mm at low speed, Germanischer Lloyd (from memory)
    [0.01, 1.423],
    [0.02, 2.0125],
    [0.05, 3.182],
    [0.1, 4.5],
  ])('class length of %f m', (outerDiameter, length) => {
    const shaft = shaftOf({ length: 1, outerDiameter, supports: [{ at: 0 }, { at: 1 }] });
    const [span] = bearingSpans(lineOf([shaft]), { speed: 200 * RPM });
    expect(span!.classLength).toBeCloseTo(length, 3);
  });

  it('turns down a speed of nought', () => {
    expect(() => bearingSpans(exampleLine(), { speed: 0 })).toThrow(
      'bearingSpans: speed must be a finite number greater than 0, got 0',
    );
  });
});

describe('permissibleUnbalance', () => {
  it.each([
    // e = G/Ω in µm, ISO 21940-11
    [2.5, 3000, 7.95775],
    [6.3, 1000, 60.1606],
    [16, 3000, 50.9296],
    [16, 10_000, 15.2789],
    [40, 500, 763.944],
  ])('G%f at %i rpm leaves %f µm', (grade, turns, micrometres) => {
    expect(permissibleUnbalance({ grade, mass: 1, speed: turns * RPM }) * 1e6).toBeCloseTo(micrometres, 3);
  });

  it('of 2 kg at G6.3 and 10 000 rpm is 12 g·mm, as printed', () => {
    // https://docs.steelcam.org/widia/katalog-widia-instrumentalnaya-osnastka-page1089
    expect(permissibleUnbalance({ grade: 6.3, mass: 2, speed: 10_000 * RPM }) * 1e6).toBeCloseTo(12.03, 2);
  });

  it('turns down a grade that there is not', () => {
    expect(() => permissibleUnbalance({ grade: 15, mass: 1, speed: 100 })).toThrow(
      'permissibleUnbalance: grade must be one of 0.4, 1, 2.5, 6.3, 16, 40, 100, 250, 630, 1600, 4000, got 15',
    );
    expect(() => permissibleUnbalance({ grade: 16, mass: -1, speed: 100 })).toThrow(
      'permissibleUnbalance: mass must be a finite number of at least 0, got -1',
    );
    expect(() => permissibleUnbalance({ grade: 16, mass: 1, speed: 0 })).toThrow(
      'permissibleUnbalance: speed must be a finite number greater than 0, got 0',
    );
  });
});
