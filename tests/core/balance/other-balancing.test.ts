import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  balanceByInfluence,
  balanceByTwoRuns,
  BALANCE_SAFETY,
  splitCorrection,
  trialMass,
  verifyBalance,
} from '@sternline/core';
import { createRandom } from '../../../packages/core/src/numerics/random.js';

const DEGREE = Math.PI / 180;

function vector(size: number, angle: number): [number, number] {
  return [size * Math.cos(angle), size * Math.sin(angle)];
}

function sum(...vectors: (readonly [number, number])[]): [number, number] {
  return [vectors.reduce((s, [x]) => s + x, 0), vectors.reduce((s, [, y]) => s + y, 0)];
}

describe('balanceByTwoRuns', () => {
  it('gives both answers of the published runs', () => {
    // http://www.mwdropbox.com/Dropbox/_1998_retired_files/BalanceB.txt (inputs); 0.88465 W at 102.78° or 257.22° derived
    const { candidates, sensitivity } = balanceByTwoRuns({
      initial: 3,
      trials: [
        { mass: 1, angle: 0, amplitude: 5 },
        { mass: 1, angle: Math.PI, amplitude: 4 },
      ],
    });
    expect(sensitivity).toBeCloseTo(3.3912, 4);
    expect(candidates[0].mass).toBeCloseTo(0.88465, 5);
    expect(candidates.map(({ angle }) => angle / DEGREE)).toEqual([
      expect.closeTo(102.78, 2),
      expect.closeTo(257.22, 2),
    ]);
  });

  it('one of the two undoes any unbalance; the other leaves the amplitude it foretells', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 6.1, noNaN: true }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        fc.double({ min: -4, max: 4, noNaN: true }),
        (heavy, share, place) => {
          const amplitude = (mass: number, angle: number): number =>
            Math.hypot(...sum(vector(7, heavy), vector(mass, angle)));
          const { candidates, amplitudeIfWrong } = balanceByTwoRuns({
            initial: 7,
            trials: [place, place + Math.PI].map((angle) => ({
              mass: 7 * share,
              angle,
              amplitude: amplitude(7 * share, angle),
            })) as never,
          });
          const left = candidates.map(({ mass, angle }) => amplitude(mass, angle)).sort((a, b) => a - b);
          expect(left[0]).toBeLessThan(1e-4);
          expect(left[1]).toBeCloseTo(amplitudeIfWrong, 4);
        },
      ),
      { numRuns: 50, seed: 4 },
    );
  });

  it('states errors that 400 noisy sets bear out', () => {
    const random = createRandom(12);
    const noise = (): number => 0.05 * random.normal();
    let [inside, insideAngle] = [0, 0];
    for (let i = 0; i < 400; i++) {
      const amplitude = (mass: number, angle: number): number =>
        Math.hypot(...sum(vector(5, 1.2), vector(mass, angle))) + noise();
      const { candidates } = balanceByTwoRuns({
        initial: amplitude(0, 0),
        trials: [
          { mass: 4, angle: 0, amplitude: amplitude(4, 0) },
          { mass: 4, angle: Math.PI, amplitude: amplitude(4, Math.PI) },
        ],
        amplitudeError: 0.05,
      });
      const right = candidates.find(({ angle }) => Math.abs(angle - (1.2 + Math.PI)) < 0.5)!;
      if (Math.abs(right.mass - 5) < right.massError) inside++;
      if (Math.abs(right.angle - 1.2 - Math.PI) < right.angleError) insideAngle++;
    }
    expect(Math.abs(inside / 400 - 0.683)).toBeLessThan(0.07);
    expect(Math.abs(insideAngle / 400 - 0.683)).toBeLessThan(0.07);
  });

  it('warns where no place explains both amplitudes', () => {
    const { warnings } = balanceByTwoRuns({
      initial: 3,
      trials: [
        { mass: 1, angle: 0, amplitude: 9 },
        { mass: 1, angle: Math.PI, amplitude: 2 },
      ],
    });
    expect(warnings.map(({ code }) => code)).toEqual(['circles-inconsistent']);
  });

  it.each([
    [{ mass: 2, angle: Math.PI, amplitude: 4 }, 'trials must be runs with the same mass, got "1 and 2"'],
    [{ mass: 1, angle: 2, amplitude: 4 }, 'trials must be half a turn (π) apart, got "0 and 2"'],
    [
      { mass: 1, angle: Math.PI, amplitude: 0 },
      'trials must be amplitudes whose mean square is above that of the initial run (3), got "3 and 0"',
    ],
  ])('refuses %o', (second, text) => {
    const first = { mass: 1, angle: 0, amplitude: 3 };
    expect(() => balanceByTwoRuns({ initial: 3, trials: [first, second] })).toThrow(
      new RangeError(`balanceByTwoRuns: ${text}`),
    );
  });
});

describe('balanceByInfluence', () => {
  const initial = { amplitude: 7, phase: 160 * DEGREE };
  const trials = [{ mass: 0.1, angle: 0, amplitude: 5, phase: 70 * DEGREE }];

  it('gives the exact answer of the training note', () => {
    // 7∠160°, 5∠70°, 100 g: T = 8.6023∠15.54°, 81.37 g at 35.54° from the trial place (recomputed; the note rounds to 77.77 g, 35°)
    const lag = balanceByInfluence({ initial, trials, phaseIs: 'lag' });
    expect(lag.mass).toBeCloseTo(0.08137, 5);
    expect(lag.angle / DEGREE).toBeCloseTo(35.54, 2);
    expect(lag.influence.amplitude).toBeCloseTo(86.023, 3);
    const lead = balanceByInfluence({ initial, trials });
    expect(lead.angle / DEGREE).toBeCloseTo(360 - 35.54, 2);
    expect(lead.influence.phase / DEGREE).toBeCloseTo(15.54, 2);
  });

  it('undoes any unbalance, whatever the phase of the line and however many trials', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6.2, noNaN: true }),
        fc.double({ min: 0, max: 6.2, noNaN: true }),
        fc.array(fc.double({ min: 0, max: 6.2, noNaN: true }), { minLength: 1, maxLength: 3 }),
        fc.constantFrom('lead' as const, 'lag' as const),
        (heavy, delay, places, phaseIs) => {
          const read = (mass: number, angle: number) => {
            const [x, y] = sum(vector(0.004, heavy), vector(mass, angle));
            const phase = Math.atan2(y, x) + delay;
            return { amplitude: 300 * Math.hypot(x, y), phase: phaseIs === 'lead' ? phase : -phase };
          };
          const found = balanceByInfluence({
            initial: read(0, 0),
            trials: places.map((angle) => ({ mass: 0.003, angle, ...read(0.003, angle) })),
            phaseIs,
          });
          expect(read(found.mass, found.angle).amplitude).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 60, seed: 8 },
    );
  });

  it('states errors that 400 noisy sets bear out', () => {
    const random = createRandom(5);
    const noisy = ([x, y]: readonly [number, number]) => {
      const [u, v] = [x + 0.05 * random.normal(), y + 0.05 * random.normal()];
      return { amplitude: Math.hypot(u, v), phase: Math.atan2(v, u) };
    };
    let inside = 0;
    for (let i = 0; i < 400; i++) {
      const found = balanceByInfluence({
        initial: noisy(vector(5, 1)),
        trials: [0, 2].map((angle) => ({ mass: 4, angle, ...noisy(sum(vector(5, 1), vector(4, angle))) })),
        amplitudeError: 0.05,
      });
      if (Math.abs(found.mass - 5) < found.massError) inside++;
    }
    expect(Math.abs(inside / 400 - 0.683)).toBeLessThan(0.07);
  });

  it('warns of a trial mass that changes little', () => {
    const { warnings } = balanceByInfluence({
      initial,
      trials: [{ mass: 0.1, angle: 0, amplitude: 7.2, phase: 161 * DEGREE }],
      amplitudeError: 0.3,
    });
    expect(warnings.map(({ code }) => code)).toEqual(['trial-too-small', 'answer-uncertain']);
  });

  it('refuses trials that change nothing', () => {
    expect(() => balanceByInfluence({ initial, trials: [{ mass: 0.1, angle: 0, ...initial }] })).toThrow(
      'balanceByInfluence: trials must be runs in which the trial mass changes the response, got a list of 1',
    );
    expect(() => balanceByInfluence({ initial, trials: [] })).toThrow('one run or more');
  });
});

describe('trialMass', () => {
  it('pulls with a tenth of the weight', () => {
    // derived: 0.1 · 2 kg · 9.80665 = 1.96133 N; at 3000 rpm and 50 mm m = F / (r Ω²)
    const speed = 100 * Math.PI;
    const { mass, force, unbalance } = trialMass({ rotorMass: 2, speed, radius: 0.05 });
    expect(force).toBeCloseTo(1.96133, 6);
    expect(mass * 0.05 * speed ** 2).toBeCloseTo(force, 10);
    expect(unbalance).toBeCloseTo(mass * 0.05, 12);
  });

  it('refuses a speed of 0', () => {
    expect(() => trialMass({ rotorMass: 2, speed: 0, radius: 0.05 })).toThrow(
      'trialMass: speed must be a finite number greater than 0, got 0',
    );
  });
});

describe('splitCorrection', () => {
  const blades = [0, 90, 180, 270].map((angle) => angle * DEGREE);

  it('halves a correction midway between two blades by √2', () => {
    // derived: 2 m cos 45° = M
    const { parts } = splitCorrection({ mass: 1, angle: 45 * DEGREE }, { positions: blades });
    expect(parts.map(({ mass }) => mass)).toEqual([
      expect.closeTo(Math.SQRT1_2, 12),
      expect.closeTo(Math.SQRT1_2, 12),
    ]);
  });

  it('adds up to the correction, or to it and what is left', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        fc.uniqueArray(fc.integer({ min: 0, max: 35 }), { minLength: 2, maxLength: 6 }),
        fc.constantFrom('adding' as const, 'removing' as const),
        (angle, tens, by) => {
          const positions = tens.map((ten) => 10 * ten * DEGREE);
          const { parts, left } = splitCorrection({ mass: 2, angle }, { positions, by });
          const sign = by === 'adding' ? 1 : -1;
          const done = sum(
            ...parts.map((part) => vector(sign * part.mass, part.angle)),
            vector(left.mass, left.angle),
          );
          const [x, y] = vector(2, angle);
          expect(done[0]).toBeCloseTo(x, 5);
          expect(done[1]).toBeCloseTo(y, 5);
          expect(parts.every(({ mass }) => mass >= 0)).toBe(true);
          expect(left.mass).toBeLessThanOrEqual(2);
        },
      ),
      { numRuns: 200, seed: 3 },
    );
  });

  it('puts all on a place that fits', () => {
    const { parts, left } = splitCorrection({ mass: 1, angle: 90 * DEGREE }, { positions: blades });
    expect(parts).toEqual([{ position: 1, angle: 90 * DEGREE, mass: 1 }]);
    expect(left.mass).toBe(0);
  });

  it('refuses one place given twice', () => {
    expect(() => splitCorrection({ mass: 1, angle: 0 }, { positions: [1, 1 + 2 * Math.PI] })).toThrow(
      'splitCorrection: positions must be two different places or more, got a list of 2',
    );
  });
});

describe('verifyBalance', () => {
  it.each([
    [1, 'as expected'],
    [4, 'lower, but more is left than expected'],
    [9.5, 'no difference shown'],
    [13, 'worse'],
  ] as const)('10 before, 1 expected, %s after: %s', (after, verdict) => {
    expect(verifyBalance({ before: 10, after, expected: 1, amplitudeError: 0.5 }).verdict).toBe(verdict);
  });

  it.each([
    // ±5 % is as well as a run repeats (common practice)
    [9.4, 'lower, but more is left than expected'],
    [9.6, 'no difference shown'],
    [10.06, 'no difference shown'],
    [10.4, 'no difference shown'],
    [10.6, 'worse'],
  ] as const)('10 before, no error told, %s after: %s', (after, verdict) => {
    expect(verifyBalance({ before: 10, after, expected: 1 }).verdict).toBe(verdict);
  });

  it('calls a correction that did nothing a difference in 5 % of 2000 readings', () => {
    const random = createRandom(21);
    let called = 0;
    for (let i = 0; i < 2000; i++) {
      const { verdict } = verifyBalance({
        before: 10 + 0.5 * random.normal(),
        after: 10 + 0.5 * random.normal(),
        expected: 1,
        amplitudeError: 0.5,
      });
      if (verdict !== 'no difference shown') called++;
    }
    // Four standard errors of a share of 2000: 0.02.
    expect(Math.abs(called / 2000 - 0.05)).toBeLessThan(0.02);
  });

  it('gives the ratio with its error', () => {
    // derived: σ √(1 + ratio²) / before
    const { ratio, ratioError, decibels } = verifyBalance({
      before: 10,
      after: 1,
      expected: 1,
      amplitudeError: 0.5,
    });
    expect(ratio).toBeCloseTo(0.1, 12);
    expect(decibels).toBeCloseTo(-20, 9);
    expect(ratioError).toBeCloseTo(0.05 * Math.sqrt(1.01), 12);
  });
});

describe('BALANCE_SAFETY', () => {
  it.each([/fast/, /fly off/, /guard/, /battery out/, /eye protection/])('speaks of %s', (word) => {
    expect(BALANCE_SAFETY.join(' ')).toMatch(word);
  });
});
