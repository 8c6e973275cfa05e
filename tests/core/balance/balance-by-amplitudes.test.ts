import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balanceByAmplitudes, type AmplitudeBalanceInput, type TrialRun } from '@sternline/core';
import { createRandom } from '../../../packages/core/src/numerics/random.js';

const DEGREE = Math.PI / 180;
const EVENLY = [0, 120, 240];

interface Rotor {
  /** kg and rad: where the rotor is heavy. */
  readonly heavy: { readonly mass: number; readonly angle: number };
  /** Amplitude for each kg. */
  readonly sensitivity: number;
}

/** Amplitude of a rotor with a mass put on, straight from the sum of two vectors. */
function amplitudeOf({ heavy, sensitivity }: Rotor, mass = 0, angle = 0): number {
  return (
    sensitivity *
    Math.hypot(
      heavy.mass * Math.cos(heavy.angle) + mass * Math.cos(angle),
      heavy.mass * Math.sin(heavy.angle) + mass * Math.sin(angle),
    )
  );
}

function runs(
  rotor: Rotor,
  { mass, places = EVENLY, noise = () => 0 }: { mass: number; places?: number[]; noise?: () => number },
): AmplitudeBalanceInput {
  return {
    initial: amplitudeOf(rotor) + noise(),
    trials: places.map((place): TrialRun => {
      const angle = place * DEGREE;
      return { mass, angle, amplitude: Math.abs(amplitudeOf(rotor, mass, angle) + noise()) };
    }),
  };
}

function apart(a: number, b: number): number {
  return Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
}

const codes = (input: AmplitudeBalanceInput): string[] =>
  balanceByAmplitudes(input).warnings.map(({ code }) => code);

describe('published and independent values', () => {
  it('lands between the answers drawn for the classic set, whose circles miss each other', () => {
    // http://reliabilityweb.com/index.php/articles/balancing_without_phase/ (inputs); 40 to 42° and 58.8 to 62.0 g recomputed
    const found = balanceByAmplitudes({
      initial: 10,
      trials: [7, 12, 18].map((amplitude, i) => ({ mass: 0.05, angle: 120 * i * DEGREE, amplitude })),
    });
    expect(found.mass).toBeGreaterThan(0.0588);
    expect(found.mass).toBeLessThan(0.062);
    expect(found.angle / DEGREE).toBeGreaterThan(40);
    expect(found.angle / DEGREE).toBeLessThan(42);
    expect(found.residual).toBeGreaterThan(0.1);
    expect(found.warnings.map(({ code }) => code)).toEqual(['circles-inconsistent']);
  });

  it('gives 16 g at 20° for the exact set', () => {
    // derived: |8∠200° + 5 ∠φ| with 10 g making 5
    const found = balanceByAmplitudes({
      initial: 8,
      trials: [3.718143, 10.143562, 12.259019].map((amplitude, i) => ({
        mass: 0.01,
        angle: 120 * i * DEGREE,
        amplitude,
      })),
      radius: 0.02,
    });
    expect(found.mass).toBeCloseTo(0.016, 7);
    expect(found.angle / DEGREE).toBeCloseTo(20, 4);
    expect(found.unbalance).toBeCloseTo(0.016 * 0.02, 8);
    expect(found.residual).toBeLessThan(1e-6);
    expect(found.expectedAmplitude).toBeLessThan(1e-5);
    expect(found.warnings).toEqual([]);
  });

  const { cases } = JSON.parse(
    readFileSync(new URL('../../reference/balance/four-runs.json', import.meta.url), 'utf8'),
  ) as {
    cases: (AmplitudeBalanceInput & {
      name: string;
      answer: { mass: number; angle: number; residual: number; sensitivity: number };
    })[];
  };
  it.each(cases)('agrees with scipy: $name', ({ answer, ...input }) => {
    const found = balanceByAmplitudes(input);
    expect(found.mass / answer.mass).toBeCloseTo(1, 5);
    expect(apart(found.angle, answer.angle)).toBeLessThan(1e-5);
    expect(found.residual / answer.residual).toBeCloseTo(1, 5);
    expect(found.sensitivity / answer.sensitivity).toBeCloseTo(1, 5);
  });
});

describe('laws', () => {
  const rotor = fc.record({
    heavy: fc.record({
      mass: fc.double({ min: 1e-4, max: 1e-2, noNaN: true }),
      angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
    }),
    sensitivity: fc.double({ min: 1, max: 1e4, noNaN: true }),
  });
  const share = fc.double({ min: 0.3, max: 2.5, noNaN: true });

  it('undoes any unbalance from exact amplitudes', () => {
    fc.assert(
      fc.property(rotor, share, (made, part) => {
        const found = balanceByAmplitudes(runs(made, { mass: part * made.heavy.mass }));
        expect(amplitudeOf(made, found.mass, found.angle) / amplitudeOf(made)).toBeLessThan(1e-4);
      }),
      { numRuns: 60, seed: 5 },
    );
  });

  it('turns with the mark, and not with the unit of the amplitudes', () => {
    fc.assert(
      fc.property(rotor, fc.double({ min: -3, max: 3, noNaN: true }), (made, turn) => {
        const noise = createRandom(9);
        const input = runs(made, {
          mass: made.heavy.mass,
          noise: () => 0.02 * made.sensitivity * made.heavy.mass * noise.normal(),
        });
        const before = balanceByAmplitudes(input);
        const after = balanceByAmplitudes({
          initial: 25.4 * input.initial,
          trials: input.trials.map((trial) => ({
            ...trial,
            angle: trial.angle + turn,
            amplitude: 25.4 * trial.amplitude,
          })),
        });
        expect(after.mass / before.mass).toBeCloseTo(1, 5);
        expect(apart(after.angle, before.angle + turn)).toBeLessThan(1e-4);
        expect(after.massError / before.massError).toBeCloseTo(1, 3);
      }),
      { numRuns: 30, seed: 6 },
    );
  });

  it('does not hang on the order of the trials', () => {
    const random = createRandom(3);
    const input = runs(
      { heavy: { mass: 0.003, angle: 2 }, sensitivity: 300 },
      { mass: 0.002, noise: () => 0.02 * random.normal() },
    );
    const turned = balanceByAmplitudes({ ...input, trials: [...input.trials].reverse() });
    expect(turned.mass).toBeCloseTo(balanceByAmplitudes(input).mass, 8);
  });
});

describe('errors', () => {
  // Clear of the places where a trial mass would just cancel the unbalance: there a reading near 0 errs one way only.
  const rotor = { heavy: { mass: 0.002, angle: 0.4 }, sensitivity: 500 };

  /** Share of 400 noisy sets whose truth lies within one standard error. */
  function held(options: { given: boolean; places: number[] }): { mass: number; angle: number } {
    const random = createRandom(77);
    let [mass, angle] = [0, 0];
    for (let i = 0; i < 400; i++) {
      const input = runs(rotor, {
        mass: 0.002,
        places: options.places,
        noise: () => 0.02 * random.normal(),
      });
      const found = balanceByAmplitudes({ ...input, ...(options.given ? { amplitudeError: 0.02 } : {}) });
      if (Math.abs(found.mass - rotor.heavy.mass) < found.massError) mass++;
      if (apart(found.angle, rotor.heavy.angle + Math.PI) < found.angleError) angle++;
    }
    return { mass: mass / 400, angle: angle / 400 };
  }

  it.each([
    { given: true, places: EVENLY },
    { given: false, places: EVENLY },
    { given: false, places: [0, 60, 120, 180, 240, 300] },
  ])('hold the truth in 68 % of 400 noisy sets: %o', (options) => {
    const { mass, angle } = held(options);
    // Three standard errors of a share of 400: 0.07.
    expect(Math.abs(mass - 0.683)).toBeLessThan(0.07);
    expect(Math.abs(angle - 0.683)).toBeLessThan(0.07);
  });

  it('foretell the amplitude that is left', () => {
    const random = createRandom(78);
    let [left, expected] = [0, 0];
    for (let i = 0; i < 400; i++) {
      const input = runs(rotor, { mass: 0.002, noise: () => 0.02 * random.normal() });
      const found = balanceByAmplitudes({ ...input, amplitudeError: 0.02 });
      left += amplitudeOf(rotor, found.mass, found.angle) ** 2;
      expected += found.expectedAmplitude ** 2;
    }
    expect(Math.sqrt(left / expected)).toBeGreaterThan(0.9);
    expect(Math.sqrt(left / expected)).toBeLessThan(1.1);
  });

  it('calls sound readings inconsistent about as seldom as stated', () => {
    const random = createRandom(79);
    let alarms = 0;
    for (let i = 0; i < 400; i++) {
      const input = runs(rotor, { mass: 0.002, noise: () => 0.02 * random.normal() });
      const { warnings } = balanceByAmplitudes({ ...input, amplitudeError: 0.02 });
      if (warnings.some(({ code }) => code === 'circles-inconsistent')) alarms++;
    }
    // Stated 1 %; 12 of 400 is four standard errors above.
    expect(alarms).toBeLessThanOrEqual(12);
  });
});

describe('warnings', () => {
  const rotor = { heavy: { mass: 0.002, angle: 1 }, sensitivity: 500 };

  it.each([
    ['trial-too-small', { mass: 0.0002 }],
    ['trial-too-large', { mass: 0.02 }],
    ['angles-ill-placed', { mass: 0.002, places: [0, 30, 60] }],
  ] as const)('%s', (code, { mass, ...more }) => {
    expect(codes(runs(rotor, { mass, places: [...('places' in more ? more.places : EVENLY)] }))).toEqual([
      code,
    ]);
  });

  it('answer-uncertain', () => {
    const input = runs(rotor, { mass: 0.002 });
    expect(codes({ ...input, amplitudeError: 0.4 })).toEqual(['answer-uncertain']);
    expect(codes({ ...input, amplitudeError: 0.01 })).toEqual([]);
  });

  it('says how much larger a trial mass should be', () => {
    const [warning] = balanceByAmplitudes(runs(rotor, { mass: 0.0002 })).warnings;
    expect(warning?.sentence).toContain('10 % as much');
    expect(warning?.sentence).toContain('5.0 times the mass');
  });
});

describe('refusals', () => {
  const good = runs({ heavy: { mass: 0.002, angle: 1 }, sensitivity: 500 }, { mass: 0.002 });
  it.each<[string, Partial<AmplitudeBalanceInput>]>([
    ['balanceByAmplitudes: initial must be a finite number greater than 0, got 0', { initial: 0 }],
    [
      'balanceByAmplitudes: trials must be three runs or more, got a list of 2',
      { trials: good.trials.slice(1) },
    ],
    [
      'balanceByAmplitudes: trials[1].mass must be a finite number greater than 0, got -1',
      { trials: good.trials.map((trial, i) => (i === 1 ? { ...trial, mass: -1 } : trial)) },
    ],
    [
      'balanceByAmplitudes: trials[2].amplitude must be a finite number of at least 0, got NaN',
      { trials: good.trials.map((trial, i) => (i === 2 ? { ...trial, amplitude: NaN } : trial)) },
    ],
    ['balanceByAmplitudes: radius must be a finite number greater than 0, got -0.02', { radius: -0.02 }],
    [
      'balanceByAmplitudes: trials must be at places that are not all on one line through the shaft, got a list of 3',
      { trials: good.trials.map((trial, i) => ({ ...trial, angle: [0, Math.PI, 0][i]! })) },
    ],
    [
      'balanceByAmplitudes: trials must be runs of which one or more changes the amplitude, got a list of 3',
      { trials: good.trials.map((trial) => ({ ...trial, amplitude: good.initial })) },
    ],
  ])('%s', (text, change) => {
    expect(() => balanceByAmplitudes({ ...good, ...change })).toThrow(new RangeError(text));
  });
});
