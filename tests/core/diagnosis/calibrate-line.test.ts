import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  calibrateLine,
  criticalSpeeds,
  exampleLine,
  type CalibrateLineOptions,
  type ShaftLine,
  type Support,
} from '@sternline/core';
import { createRandom } from '../../../packages/core/src/numerics/random.js';

const TURN = 2 * Math.PI;
const LN_TEN = Math.log(10);

/** A rod on two bushes at its ends. */
function rod(support: Partial<Support> = {}, { length = 0.4, diameter = 0.004 } = {}): ShaftLine {
  const material = {
    name: 'steel',
    youngsModulus: 206e9,
    // Next to no shear, as in the beam of the reference.
    shearModulus: 1e15,
    density: 7850,
    yieldStrength: 250e6,
  };
  return {
    name: 'rod',
    joints: [],
    shafts: [
      {
        name: 'rod',
        length,
        outerDiameter: diameter,
        innerDiameter: 0,
        material,
        elevation: 0,
        plan: 0,
        yokeTwist: 0,
        supports: [
          { at: 0, ...support },
          { at: length, ...support },
        ],
        discs: [],
      },
    ],
  };
}

/** Critical speeds of the line with these stiffnesses in place of its own. */
function speedsWith(line: ShaftLine, support: Partial<Support>, count: number): number[] {
  const shafts = line.shafts.map((shaft) => ({
    ...shaft,
    supports: shaft.supports.map((one) => ({ ...one, ...support })),
  }));
  return criticalSpeeds({ ...line, shafts }, { count }).map(({ speed }) => speed);
}

const EI = (206e9 * Math.PI * 0.004 ** 4) / 64;
const MEDIAN = { radial: (3000 * EI) / 0.4 ** 3, angular: (0.2 * EI) / 0.4 };

describe('against scipy on a beam without elements', () => {
  const { cases } = JSON.parse(
    readFileSync(new URL('../../reference/diagnosis/sprung-beam.json', import.meta.url), 'utf8'),
  ) as {
    cases: {
      error: number;
      frequencies: number[];
      moved: number[];
      deviation: number[];
      totalChiSquare: number;
    }[];
  };
  it.each(cases)('$frequencies Hz', ({ error, frequencies, moved, deviation, totalChiSquare }) => {
    const found = calibrateLine(rod(), {
      resonances: frequencies.map((frequency, i) => ({ frequency, mode: i + 1, error: error * frequency })),
      modelError: 0,
    });
    found.parameters.forEach((parameter, i) => {
      // Rotary inertia, which the reference leaves out, takes up to 0.04 % off the third mode: 0.08 standard errors.
      expect(Math.abs(parameter.moved - moved[i]!)).toBeLessThan(0.1 * deviation[i]!);
      const reach = Math.log(parameter.interval[1] / parameter.factor) / LN_TEN;
      expect(reach / deviation[i]!).toBeGreaterThan(0.97);
      expect(reach / deviation[i]!).toBeLessThan(1.03);
      expect(parameter.dataShare).toBeCloseTo(1 - deviation[i]! ** 2, 1);
    });
    expect(Math.abs(found.totalChiSquare - totalChiSquare)).toBeLessThan(0.2);
  });
});

describe('planted stiffnesses', () => {
  it('lie within one stated standard deviation in 68 % of 60 seeded rods', () => {
    const random = createRandom(31);
    const held = [0, 0];
    for (let i = 0; i < 60; i++) {
      const truth = [random.normal(), random.normal()];
      const speeds = speedsWith(
        rod(),
        {
          radialStiffness: MEDIAN.radial * Math.exp(LN_TEN * truth[0]!),
          angularStiffness: MEDIAN.angular * Math.exp(LN_TEN * truth[1]!),
        },
        3,
      );
      const { parameters } = calibrateLine(rod(), {
        resonances: speeds.map((speed, mode) => ({
          speed: speed * (1 + 0.01 * random.normal()),
          mode: mode + 1,
          error: 0.01 * speed,
        })),
        modelError: 0,
      });
      parameters.forEach(({ interval }, j) => {
        const factor = Math.exp(LN_TEN * truth[j]!);
        if (interval[0] < factor && factor < interval[1]) held[j]! += 1;
      });
    }
    // Three standard errors of a share of 60: 0.18.
    expect(Math.abs(held[0]! / 60 - 0.683)).toBeLessThan(0.18);
    expect(Math.abs(held[1]! / 60 - 0.683)).toBeLessThan(0.18);
  });

  it('are found on the whole line, and the modes with them', () => {
    const line = exampleLine();
    const planted = line.shafts.map((shaft, i) =>
      i === 0
        ? shaft
        : {
            ...shaft,
            supports: shaft.supports.map((one) => ({ ...one, radialStiffness: 4e5, angularStiffness: 60 })),
          },
    );
    const truth = { ...line, shafts: planted };
    const speeds = criticalSpeeds(truth, { count: 3 }).map(({ speed }) => speed);
    const found = calibrateLine(line, {
      resonances: speeds.map((speed) => ({ speed, error: 0.005 * speed })),
      modelError: 0.002,
    });
    expect(found.supported).toBe(true);
    expect(found.matches.map(({ mode }) => mode)).toEqual([1, 2, 3]);
    const [radial, angular] = found.parameters.map(({ supports }) => supports[0]!.value);
    expect(Math.abs(Math.log(radial! / 4e5))).toBeLessThan(0.1);
    expect(Math.abs(Math.log(angular! / 60))).toBeLessThan(0.2);
    expect(found.matches.map(({ built, measured }) => built / measured)).toEqual(
      speeds.map((): unknown => expect.closeTo(1, 2)),
    );
  });
});

describe('the line as built', () => {
  const line = rod();
  const [first, second] = speedsWith(line, {}, 2) as [number, number];

  it('stands beside the line as designed, which stays as it is', () => {
    const before = JSON.stringify(line);
    const found = calibrateLine(line, { resonances: [{ speed: 1.4 * first, error: 0.01 * first }] });
    expect(JSON.stringify(line)).toBe(before);
    expect(found.designed).toBe(line);
    expect(found.supported).toBe(true);
    const [match] = found.matches;
    expect(match!.designed).toBeCloseTo(first, 6);
    expect(criticalSpeeds(found.built, { count: 1 })[0]!.speed / (1.4 * first)).toBeCloseTo(1, 1);
    expect(found.parameters[1]!.supports[0]).toMatchObject({ shaft: 0, support: 0, designed: 0 });
    expect(found.parameters[0]!.supports[0]!.designed).toBe(Infinity);
  });

  it('is stiffer the higher it rings', () => {
    const fixity = [1.05, 1.15, 1.3, 1.5, 1.8].map((factor) => {
      const { parameters } = calibrateLine(line, { resonances: [{ speed: factor * first, mode: 1 }] });
      return parameters[1]!.supports[0]!.value;
    });
    expect(fixity).toEqual([...fixity].sort((a, b) => a - b));
    expect(fixity.at(-1)! / fixity[0]!).toBeGreaterThan(10);
  });

  it('stays as assumed where it rings as assumed', () => {
    const assumed = speedsWith(line, { radialStiffness: MEDIAN.radial, angularStiffness: MEDIAN.angular }, 2);
    const found = calibrateLine(line, { resonances: assumed.map((speed) => ({ speed })) });
    found.parameters.forEach(({ moved }) => {
      expect(Math.abs(moved)).toBeLessThan(1e-3);
    });
    expect(found.totalChiSquare).toBeLessThan(1e-5);
  });

  it('is the same by tapping and by running where nothing but the thin rod turns', () => {
    // derived: the gyroscopic effect of a rod is (nπ r/L)² of its frequency, under 0.01 % here
    const tapped = calibrateLine(line, { resonances: [{ frequency: (1.3 * first) / TURN }] });
    const run = calibrateLine(line, { resonances: [{ speed: 1.3 * first }] });
    const halfway = calibrateLine(line, { resonances: [{ speed: 0.65 * first, order: 2 }] });
    expect(tapped.parameters[1]!.moved).toBeCloseTo(run.parameters[1]!.moved, 2);
    expect(halfway.parameters[1]!.moved).toBeCloseTo(run.parameters[1]!.moved, 2);
  });

  it('needs less stiffness for a tap in air than in water', () => {
    const whole = exampleLine();
    const [ring] = criticalSpeeds(whole, { count: 1, order: 1e7 }).map(({ speed }) => (speed * 1e7) / TURN);
    const [wet, dry] = (['water', 'air'] as const).map(
      (medium) =>
        calibrateLine(whole, { resonances: [{ frequency: 1.3 * ring!, mode: 1, medium }] }).parameters[1]!
          .moved,
    );
    expect(dry!).toBeLessThan(wet!);
  });

  it('takes what the design gives as the median', () => {
    const { parameters } = calibrateLine(rod({ radialStiffness: 2e5, angularStiffness: 7 }), {
      resonances: [{ speed: first }, { speed: second }],
    });
    expect(parameters.map(({ supports }) => supports[0]!.median)).toEqual([2e5, 7]);
  });
});

describe('what the data cannot support', () => {
  const line = rod();
  const [first] = speedsWith(line, {}, 1) as [number];
  const judged = (options: CalibrateLineOptions) => calibrateLine(line, options);

  it('one resonance tells one combination, and says so', () => {
    const found = judged({ resonances: [{ speed: 1.4 * first, mode: 1 }] });
    expect(found.effectiveParameters).toBeLessThan(1.001);
    expect(found.parameters.some(({ dataShare }) => dataShare < 0.1)).toBe(true);
    expect(found.parameters[0]!.sentence).toMatch(/% of this comes from the measurement\.$/);
  });

  it('a resonance known to a third leaves the line as designed', () => {
    const found = judged({ resonances: [{ speed: 1.1 * first, mode: 1, error: 0.33 * first }] });
    expect(found).toMatchObject({ supported: false, built: line });
    expect(found.reasons[0]).toMatch(/^The resonance says too little: at most [\d.]+ % of what is known/);
  });

  it('many stiffnesses for one resonance', () => {
    const parameters = [0, 1].flatMap((support) =>
      (['radial', 'angular'] as const).map((kind) => ({ kind, supports: [{ shaft: 0, support }] })),
    );
    const found = judged({ resonances: [{ speed: 1.05 * first, mode: 1 }], parameters });
    expect(found.effectiveParameters).toBeLessThan(1.001);
    expect(found.supported).toBe(false);
    expect(found.built).toBe(line);
  });

  it('a pair that no bush makes', () => {
    const found = judged({
      resonances: [
        { speed: first, mode: 1 },
        { speed: 1.5 * first, mode: 2 },
        { speed: 9 * first, mode: 3 },
      ],
    });
    expect(found.supported).toBe(false);
    expect(found.reasons[0]).toMatch(/^No stiffness within reason explains the 3 resonances together/);
  });

  it('a frequency that is no mode of the line', () => {
    const found = judged({ resonances: [{ speed: first / 50 }] });
    expect(found.supported).toBe(false);
    expect(found.reasons).toEqual([
      'No whirl mode of the line lies within a factor of three of the resonance: what rang may be the hull or a bracket.',
    ]);
  });

  it.each<[CalibrateLineOptions, string]>([
    [{ resonances: [] }, 'calibrateLine: resonances must be one or more, got a list of 0'],
    [
      { resonances: [{ frequency: -3 }] },
      'calibrateLine: resonances[0].frequency must be a finite number greater than 0, got -3',
    ],
    [
      { resonances: [{ speed: 300, mode: 0 }] },
      'calibrateLine: resonances[0].mode must be a whole number from 1 to 12, got 0',
    ],
    [
      { resonances: [{ speed: 300, error: NaN }] },
      'calibrateLine: resonances[0].error must be a finite number of at least 0, got NaN',
    ],
    [
      { resonances: [{ speed: 300, error: 0 }], modelError: 0 },
      'calibrateLine: modelError must be greater than 0 where a resonance has no error, got 0',
    ],
    [
      {
        resonances: [{ speed: 300 }],
        parameters: [{ kind: 'radial', supports: [{ shaft: 3, support: 0 }] }],
      },
      'calibrateLine: parameters[0].supports must be supports that the line has, got 1',
    ],
  ])('refuses %o', (options, text) => {
    expect(() => judged(options)).toThrow(new RangeError(text));
  });
});
