import { describe, expect, it } from 'vitest';
import { criticalSpeeds, exampleLine, parseShaftLine, toleranceStudy, type ShaftLine } from '@sternline/core';

/** A bare steel rod on two pins: Ω = (π/L)² √(EI/ρA) ∝ d / L². */
function rod({ diameter = 0.005, length = 0.3 } = {}): ShaftLine {
  return parseShaftLine({
    name: 'bare rod',
    shafts: [
      { length, outerDiameter: diameter, material: 'carbon steel', supports: [{ at: 0 }, { at: length }] },
    ],
    joints: [],
  });
}

const first = (line: ShaftLine): number => criticalSpeeds(line, { count: 4 })[0]!.speed;

describe('toleranceStudy', () => {
  it('spreads nothing where nothing is uncertain', () => {
    const study = toleranceStudy(rod(), { speed: 300, tolerances: {}, samples: 5 });
    for (const critical of study.criticalSpeeds) {
      expect(critical.standardDeviation).toBe(0);
      expect(critical.low).toBe(critical.high);
    }
    expect(study.sensitivities).toEqual([]);
    expect(study.verdict).toEqual({ clear: 1, near: 0, inside: 0 });
  });

  it('carries a small error of the diameter over in proportion', () => {
    // Derived: Ω ∝ d for a slender rod, so a rectangle of ± a in d spreads Ω by Ω a / (d √3) (JCGM 100, 4.3.7).
    const half = 0.00005;
    const study = toleranceStudy(rod(), {
      speed: 300,
      tolerances: { 'shafts[0].outerDiameter': half },
      samples: 4000,
      seed: 9,
    });
    const [critical] = study.criticalSpeeds;
    const expected = (critical!.nominal * half) / (0.005 * Math.sqrt(3));
    // The standard deviation of a rectangle over 4 000 draws is known to √(0.2/4000) = 0.7 %; three of these.
    expect(Math.abs(critical!.standardDeviation / expected - 1)).toBeLessThan(0.021);
    expect(study.sensitivities[0]!.share).toBeGreaterThan(0.999);
    expect(study.sensitivities[0]!.slope / (critical!.nominal / 0.005)).toBeCloseTo(1, 2);
  });

  it('adds independent errors by their squares, with slopes as finite differences give them', () => {
    const line = exampleLine();
    const tolerances = {
      'shafts[1].supports[0].at': { standardDeviation: 0.0004 },
      'shafts[1].supports[1].at': { standardDeviation: 0.0004 },
      'shafts[1].discs[0].mass': { standardDeviation: 0.0008 },
    };
    const study = toleranceStudy(line, { speed: 900, tolerances, samples: 1500, seed: 4 });
    const spread = study.criticalSpeeds.find(
      ({ excitation, mode }) => excitation === 'unbalance' && mode === 1,
    )!;
    const change = (apply: (shaft: ShaftLine['shafts'][number], by: number) => object, by: number) => {
      const moved = (sign: number) =>
        first(
          parseShaftLine({
            ...line,
            shafts: line.shafts.map((shaft, i) =>
              i === 1 ? { ...shaft, ...apply(shaft, sign * by) } : shaft,
            ),
          }),
        );
      return (moved(1) - moved(-1)) / 2;
    };
    const bush = (place: number) => (shaft: ShaftLine['shafts'][number], by: number) => ({
      supports: shaft.supports.map((support, i) =>
        i === place ? { ...support, at: support.at + by } : support,
      ),
    });
    const mass = (shaft: ShaftLine['shafts'][number], by: number) => ({
      discs: shaft.discs.map((disc) => ({ ...disc, mass: disc.mass + by })),
    });
    const parts = [change(bush(0), 0.0004), change(bush(1), 0.0004), change(mass, 0.0008)];
    const expected = Math.hypot(...parts);
    // Normal draws: the standard deviation is known to 1/√(2 × 1500) = 1.8 %; three of these.
    expect(Math.abs(spread.standardDeviation / expected - 1)).toBeLessThan(0.055);
  });

  it('gives even odds on the edge of a band', () => {
    const line = rod();
    const edge = 0.75 * first(line);
    const study = toleranceStudy(line, {
      speed: edge,
      tolerances: { 'shafts[0].outerDiameter': 0.0001 },
      samples: 1000,
      seed: 2,
    });
    // Binomial: 0.5 ± 0.0158; three of these.
    expect(Math.abs(study.chanceInBand - 0.5)).toBeLessThan(0.048);
    expect(study.chanceInBandError).toBeCloseTo(0.0158, 3);
    expect(study.decisive).toEqual({ excitation: 'unbalance', order: 1, whirl: 'forward', mode: 1 });
  });

  it('draws lines that cannot be built anew, and counts them', () => {
    const line = rod();
    const study = toleranceStudy(line, {
      speed: 300,
      tolerances: { 'shafts[0].supports[1].at': 0.002 },
      samples: 200,
      seed: 6,
    });
    // Half of the draws put the bush beyond the end of the shaft.
    expect(study.redrawn).toBeGreaterThan(140);
    expect(study.redrawn).toBeLessThan(270);
  });

  it('gives the same study for the same seed', () => {
    const options = { speed: 300, tolerances: { 'shafts[0].outerDiameter': 0.0001 }, samples: 40, seed: 5 };
    expect(toleranceStudy(rod(), options)).toEqual(toleranceStudy(rod(), options));
    expect(toleranceStudy(rod(), { ...options, seed: 6 })).not.toEqual(toleranceStudy(rod(), options));
  });

  it('tells how far it is, and stops where it is told to', () => {
    const told: number[] = [];
    const signal = { aborted: false, reason: new Error('enough') };
    const run = () =>
      toleranceStudy(rod(), {
        speed: 300,
        tolerances: {},
        samples: 1000,
        signal,
        onProgress: (share) => {
          told.push(share);
          if (share > 0.3) signal.aborted = true;
        },
      });
    expect(run).toThrow('enough');
    expect(told[0]).toBe(0);
    expect(told.at(-1)).toBeLessThan(0.5);
  });

  it('refuses what cannot be studied', () => {
    const run = (change: object) => () =>
      toleranceStudy(rod(), { speed: 300, tolerances: {}, samples: 5, ...change });
    expect(run({ speed: -1 })).toThrow(
      'toleranceStudy: speed must be a finite number greater than 0, got -1',
    );
    expect(run({ samples: 0 })).toThrow(
      'toleranceStudy: samples must be a whole number from 1 to 1000000, got 0',
    );
    expect(run({ tolerances: { 'shafts[3].length': 1 } })).toThrow(
      'numberAt: shafts[3].length must lead to a number of the line, got undefined',
    );
    expect(run({ tolerances: { 'shafts[0].length': -1 } })).toThrow(
      "toleranceStudy: tolerances['shafts[0].length'] must be a finite number of at least 0, got -1",
    );
    expect(run({ tolerances: { 'shafts[0].supports[0].at': 1e9 } })).toThrow(
      'toleranceStudy: tolerances must leave lines that can be built, got none in 1000 draws of shafts[0].supports[0].at',
    );
  });
});
