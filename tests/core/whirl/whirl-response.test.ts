import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { whirlResponse, type Shaft, type ShaftLine, type WhirlResponse } from '@sternline/core';
import { jointCouples } from '../../../packages/core/src/whirl/joint-couples.js';
import {
  discOf,
  lineOf,
  shaftOf,
  steel,
  uniformShaft,
  weightlessSteel,
  withoutShear,
} from '../../support/lines.js';

function within(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThanOrEqual(relative);
}

/** A weightless shaft of k = 48EI/L³ on two pins with one disc in the middle. */
function jeffcott(stiffness: number, parts: Parameters<typeof discOf>[0], runout = 0): ShaftLine {
  const length = 0.5;
  const bending = (stiffness * length ** 3) / 48;
  const outerDiameter = ((bending * 64) / (Math.PI * steel.youngsModulus)) ** 0.25;
  const line = uniformShaft(['pinned', 'pinned'], {
    length,
    outerDiameter,
    material: weightlessSteel,
    runout,
    discs: [discOf({ at: length / 2, ...parts })],
  });
  return withoutShear(line);
}

/** Amplitude and phase at a place that is a node. */
function at(response: WhirlResponse, place: { shaft: number; at: number }, step: number, order = 0) {
  const node = response.at.findIndex(
    (x, i) => response.shaft[i] === place.shaft && Math.abs(x - place.at) < 1e-9,
  );
  const { amplitude, phase } = response.orders[order]!;
  return { amplitude: amplitude[step]![node]!, phase: phase[step]![node]! };
}

describe('a disc out of balance in the middle of a shaft', () => {
  // k 3.75 MN/m, 60 kg, e 2 mm, 3600 rpm, ζ 0.05 (inputs read at
  // https://tutorsglobe.com/question/a-shaft-having-a-stiffness-of-375-mnm-rotates-at-3600-rpm-a-51533194.aspx);
  // e r²/√((1 − r²)² + (2ζr)²) = 3.5452 mm there, at most e/(2ζ√(1 − ζ²)) = 20.025 mm
  const line = jeffcott(3.75e6, { mass: 60, unbalance: 60 * 0.002 });
  const options = { damping: { modal: 0.05 }, excitations: [{ kind: 'unbalance' }] } as const;
  const middle = { shaft: 0, at: 0.25 };

  it('whirls 3.5452 mm at 3600 rpm, and 20.025 mm at most', () => {
    const speeds = [120 * Math.PI, 250 / Math.sqrt(1 - 2 * 0.05 ** 2)];
    const response = whirlResponse(line, { speeds, ...options });
    within(at(response, middle, 0).amplitude, 3.5452e-3, 2e-5);
    within(at(response, middle, 1).amplitude, 20.025e-3, 2e-5);
  });

  it('lags by atan2(2ζr, 1 − r²)', () => {
    // Thomson, "Theory of Vibration with Applications", eq. 3.2-5
    const ratios = [0.3, 0.9, 1, 1.1, 2];
    const response = whirlResponse(line, { speeds: ratios.map((r) => 250 * r), ...options });
    ratios.forEach((r, i) => {
      expect(at(response, middle, i).phase).toBeCloseTo(-Math.atan2(0.1 * r, 1 - r * r), 4);
    });
  });

  it('turns with the phase of the unbalance, and against a second that stands opposite', () => {
    const phased = whirlResponse(line, {
      speeds: [100],
      excitations: [{ kind: 'unbalance', phases: [0.8] }],
    });
    const plain = whirlResponse(line, { speeds: [100], excitations: [{ kind: 'unbalance' }] });
    expect(at(phased, middle, 0).phase - at(plain, middle, 0).phase).toBeCloseTo(0.8, 9);
    const [disc] = line.shafts[0]!.discs;
    const two = lineOf([{ ...line.shafts[0]!, discs: [disc!, disc!] }]);
    const cancelled = whirlResponse(two, {
      speeds: [100],
      excitations: [{ kind: 'unbalance', phases: [0, Math.PI] }],
    });
    expect(at(cancelled, middle, 0).amplitude).toBeLessThan(1e-12 * at(plain, middle, 0).amplitude);
  });
});

describe('a bent shaft', () => {
  it('whirls δ/√((1 − r²)² + (2ζr)²), δ half its reading', () => {
    // derived: m q̈ + c q̇ + k (q − δ e^{iΩt}) = 0
    const line = jeffcott(1e5, { mass: 10 }, 4e-4);
    const ratios = [0, 0.5, 0.95, 1, 1.5, 4];
    const response = whirlResponse(line, {
      speeds: ratios.map((r) => 100 * r),
      damping: { modal: 0.03 },
      excitations: [{ kind: 'bow' }],
    });
    ratios.forEach((r, i) => {
      const expected = 2e-4 / Math.hypot(1 - r * r, 0.06 * r);
      within(at(response, { shaft: 0, at: 0.25 }, i).amplitude, expected, 1e-4);
    });
  });

  it('at rest reads what it was measured at, along its whole arc', () => {
    const line = uniformShaft(['pinned', 'pinned'], { runout: 2e-4 });
    const response = whirlResponse(line, { speeds: [0], excitations: [{ kind: 'bow' }] });
    response.at.forEach((x, i) => {
      expect(response.radius[0]![i]).toBeCloseTo(1e-4 * 4 * x * (1 - x), 12);
    });
  });

  it('far above its critical speed turns about its mass', () => {
    const line = jeffcott(1e5, { mass: 10 }, 4e-4);
    const response = whirlResponse(line, { speeds: [1e5], excitations: [{ kind: 'bow' }] });
    expect(at(response, { shaft: 0, at: 0.25 }, 0).amplitude).toBeLessThan(1e-9);
  });
});

describe('a turning force', () => {
  it.each([0.2, 0.5, 0.7])('at no speed bends the shaft as a dead load at %f would', (share) => {
    // F a² b² / 3EIL under the load (any handbook of beams)
    const line = withoutShear(
      uniformShaft(['pinned', 'pinned'], { discs: [discOf({ at: share, mass: 0 })] }),
    );
    const bending = steel.youngsModulus * (Math.PI / 64) * 0.005 ** 4;
    const response = whirlResponse(line, {
      speeds: [0],
      excitations: [{ kind: 'force', shaft: 0, at: share, force: 2, order: 3, phase: 0.4 }],
    });
    const found = at(response, { shaft: 0, at: share }, 0);
    within(found.amplitude, (2 * (share * (1 - share)) ** 2) / (3 * bending), 1e-6);
    expect(found.phase).toBeCloseTo(0.4, 9);
  });

  it('of order n below and above resonance of a disc on damped bushes', () => {
    // a rigid shaft on two springs k with dashpots c: F/|2k − mω² + 2icω| (derived)
    const [k, c, mass, force, order] = [2e4, 15, 0.4, 3, 2];
    const line = uniformShaft(['free', 'free'], {
      length: 0.1,
      outerDiameter: 0.08,
      material: weightlessSteel,
      supports: [
        { at: 0, radialStiffness: k },
        { at: 0.1, radialStiffness: k },
      ],
      discs: [discOf({ at: 0.05, mass })],
    });
    const speeds = [20, 150, 158, 400];
    const response = whirlResponse(line, {
      speeds,
      damping: { modal: 1e-9, bushes: c },
      excitations: [{ kind: 'force', shaft: 0, at: 0.05, force, order, whirl: 'backward' }],
    });
    speeds.forEach((speed, i) => {
      const w = order * speed;
      const expected = force / Math.hypot(2 * k - mass * w * w, 2 * c * w);
      within(at(response, { shaft: 0, at: 0.05 }, i).amplitude, expected, 1e-4);
    });
  });
});

interface ResponseCase {
  readonly line: ShaftLine;
  readonly results: readonly {
    readonly load: string;
    readonly speeds: number[];
    readonly zeta: number;
    readonly bushes: number;
    readonly points: readonly { shaft: number; at: number }[];
    readonly amplitude: number[][];
    readonly phase: number[][];
  }[];
}

describe('jointed lines against dense complex solutions of a spectral model (tests/reference/whirl/responses.py)', () => {
  const file = new URL('../../reference/whirl/responses.json', import.meta.url);
  const { responses } = JSON.parse(readFileSync(file, 'utf8')) as { responses: ResponseCase[] };
  const rows = responses.flatMap(({ line, results }) =>
    results.map((result) => ({ name: line.name, line, ...result })),
  );
  it.each(rows)('$name, $load', ({ line, load, speeds, zeta, bushes, points, amplitude, phase }) => {
    const discs = line.shafts.flatMap((shaft) => shaft.discs) as unknown as { phase?: number }[];
    const excitations =
      load === 'unbalance and bow'
        ? [
            { kind: 'unbalance' as const, phases: discs.map((one) => one.phase ?? 0) },
            { kind: 'bow' as const },
          ]
        : [
            {
              kind: 'joints' as const,
              torque: 1,
              whirl: load === 'joints forward' ? ('forward' as const) : ('backward' as const),
            },
          ];
    const response = whirlResponse(line, { speeds, damping: { modal: zeta, bushes }, excitations });
    speeds.forEach((_, i) => {
      points.forEach((point, k) => {
        const found = at(response, point, i);
        // the mesh is good for 1e-4 of a frequency, which close to a resonance is more of an amplitude
        within(found.amplitude, amplitude[i]![k]!, 2e-3);
        // the reference leaves out where a joint's couples stand in the turn
        if (load === 'unbalance and bow')
          expect(Math.abs(Math.sin((found.phase - phase[i]![k]!) / 2))).toBeLessThan(2e-3);
      });
    });
  });
});

describe('joint couples', () => {
  type Vector = readonly [number, number, number];
  const cross = ([a, b, c]: Vector, [d, e, f]: Vector): Vector => [
    b * f - c * e,
    c * d - a * f,
    a * e - b * d,
  ];
  const product = ([a, b, c]: Vector, [d, e, f]: Vector): number => a * d + b * e + c * f;
  const unit = (v: Vector): Vector => v.map((x) => x / Math.sqrt(product(v, v))) as unknown as Vector;

  it.each([0.02, 0.1, 0.3])('of a joint at %f rad are those of its pins followed in space', (bend) => {
    // statics: the cross passes on T/(n·u) along its normal n alone; what is left across each shaft, by its 2nd harmonic
    const [u, v]: Vector[] = [
      [1, 0, 0],
      [Math.cos(bend), 0, Math.sin(bend)],
    ];
    const port: Vector = [0, 1, 0];
    const up = cross(v!, port);
    const harmonic = (side: 'driving' | 'driven', turn: number): [number, number] => {
      let [re, im] = [0, 0];
      const steps = 64;
      for (let k = 0; k < steps; k++) {
        const angle = (2 * Math.PI * k) / steps;
        // at angle 0 the pin stands on the normal of the plane, u × v, which points to starboard
        const pin: Vector = [0, -Math.cos(angle), -Math.sin(angle)];
        const other = unit(cross(v!, pin));
        const normal = cross(pin, other);
        const couple = 1 / product(normal, u!);
        const [own, z, sign]: [Vector, Vector, number] =
          side === 'driving' ? [u!, [0, 0, 1], -1] : [v!, up, 1];
        const across = normal.map(
          (x, i) => sign * couple * (x - product(normal, own) * own[i]!),
        ) as unknown as Vector;
        const [my, mz] = [product(across, port), product(across, z)];
        const [c, s] = [Math.cos(2 * angle * turn), -Math.sin(2 * angle * turn)];
        re += (my * c - mz * s) / steps;
        im += (my * s + mz * c) / steps;
      }
      return [re, im];
    };
    const line = lineOf([shaftOf(), shaftOf({ elevation: bend })]);
    const [found] = jointCouples(line);
    // a couple m about an axis does work on the slope as −i m
    const slope = ([re, im]: [number, number]): [number, number] => [im, -re];
    const [a, b] = slope(harmonic('driving', 1));
    expect(a).toBeCloseTo(found!.driving * Math.cos(found!.phase), 12);
    expect(b).toBeCloseTo(found!.driving * Math.sin(found!.phase), 12);
    expect(Math.hypot(...harmonic('driving', -1))).toBeLessThan(1e-12);
    const [c, d] = slope(harmonic('driven', 1));
    expect(Math.abs(c + found!.driven * Math.cos(found!.phase))).toBeLessThan(bend ** 3);
    expect(Math.abs(d + found!.driven * Math.sin(found!.phase))).toBeLessThan(bend ** 3);
    expect(Math.hypot(...harmonic('driven', -1))).toBeLessThan(bend ** 3);
  });

  it('of two alike joints in one plane, yokes in line, push the shaft between them opposite ways', () => {
    // the second driving pin lies a quarter turn behind, its bend the other way: in step, as for even turning
    const zigzag = lineOf([shaftOf(), shaftOf({ elevation: 0.1 }), shaftOf()]);
    const [first, second] = jointCouples(zigzag);
    expect(Math.cos(second!.phase - first!.phase)).toBeCloseTo(1, 9);
    const crossed = lineOf([shaftOf(), shaftOf({ elevation: 0.1, yokeTwist: Math.PI / 2 }), shaftOf()]);
    const [one, two] = jointCouples(crossed);
    expect(Math.cos(two!.phase - one!.phase)).toBeCloseTo(-1, 9);
  });

  /** Second harmonic of the couple that each joint leaves across its driving shaft per N·m, as work on the slope. */
  const pinCouples = (turns: readonly { elevation: number; plan: number; yokeTwist: number }[]) => {
    const axes = turns.map(({ elevation: e, plan: p }): Vector => [
      Math.cos(e) * Math.cos(p),
      Math.cos(e) * Math.sin(p),
      Math.sin(e),
    ]);
    const spin = (axis: Vector, angle: number, [x, y, z]: Vector): Vector => {
      const [a, b, c] = cross(axis, [x, y, z]);
      const along = product(axis, [x, y, z]) * (1 - Math.cos(angle));
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      return [
        x * cos + a * sin + axis[0] * along,
        y * cos + b * sin + axis[1] * along,
        z * cos + c * sin + axis[2] * along,
      ];
    };
    const bent = axes.slice(1).map((v, i) => {
      const normal = cross(axes[i]!, v);
      const sine = Math.sqrt(product(normal, normal));
      return { normal: unit(normal), angle: Math.atan2(sine, product(axes[i]!, v)) };
    });
    const sums = bent.map(() => ({ angle: 0, re: 0, im: 0 }));
    const steps = 64;
    for (let k = 0; k < steps; k++) {
      const theta = (2 * Math.PI * k) / steps;
      let port = unit(cross([0, 0, 1], axes[0]!));
      let pin = spin(axes[0]!, theta, bent[0]!.normal);
      bent.forEach(({ normal, angle }, i) => {
        const [u, v] = [axes[i]!, axes[i + 1]!];
        const driven = unit(cross(v, pin));
        const square = unit(cross(pin, driven));
        const couple = square.map((x, j) => -(x / product(square, u) - u[j]!)) as unknown as Vector;
        const [my, mz] = [product(couple, port), product(couple, cross(u, port))];
        const [c, s] = [Math.cos(2 * theta) / steps, -Math.sin(2 * theta) / steps];
        const sum = sums[i]!;
        // a couple m about an axis does work on the slope as −i m
        sum.re += my * s + mz * c;
        sum.im -= my * c - mz * s;
        sum.angle = angle;
        port = spin(normal, angle, port);
        pin = spin(v, turns[i + 1]!.yokeTwist, driven);
      });
    }
    return sums;
  };

  /** cos of the angle by which each joint's forward couple stands from that of the first. */
  const sides = (shafts: readonly Partial<Shaft>[]): number[] => {
    const couples = jointCouples(lineOf(shafts.map((shaft) => shaftOf(shaft))));
    return couples.map(({ phase }) => Math.cos(phase - couples[0]!.phase));
  };
  const closeTo = (found: readonly number[], expected: readonly number[]): void => {
    expect(found).toHaveLength(expected.length);
    found.forEach((value, i) => {
      expect(value, `joint ${i}`).toBeCloseTo(expected[i]!, 9);
    });
  };

  it.each([3, 4, 5])(
    'of %d joints that bend one way in one plane, yokes in line, push to and fro',
    (joints) => {
      // by hand: one normal; each driving pin a quarter turn from the last, so that e^{2iθ} changes its sign at each joint
      const shafts = Array.from({ length: joints + 1 }, (_, i) => ({ elevation: (i * 5 * Math.PI) / 180 }));
      const expected = Array.from({ length: joints }, (_, i) => (-1) ** i);
      closeTo(sides(shafts), expected);
    },
  );

  it('skip what stands straight: neither first nor in the middle does a joint in line turn the others round', () => {
    // by hand: a straight joint hands the pins on a quarter turn later, as any other, and bends nothing
    closeTo(
      sides([{}, { elevation: 0.1 }, { elevation: 0.1 }, { elevation: 0.2 }]).filter((_, i) => i !== 1),
      [1, 1],
    );
    const couples = jointCouples(
      lineOf([{}, {}, { elevation: 0.1 }, { elevation: 0.2 }].map((one) => shaftOf(one))),
    );
    expect(Math.cos(couples[2]!.phase - couples[1]!.phase)).toBeCloseTo(-1, 9);
    // the pin to port at first, a quarter turn on at the second joint: upright, across the plane's normal to starboard
    const [alone] = jointCouples(lineOf([shaftOf(), shaftOf({ elevation: 0.1 })]));
    expect(Math.cos(couples[1]!.phase - alone!.phase)).toBeCloseTo(-1, 9);
  });

  it.each([3, 4, 5])('of %d joints any way follow the pins in space, at small angles', (joints) => {
    // The mean of the cross's couple over a turn, taken along e^{2iθ}: pins by vectors, frames carried over each joint
    const turn = fc.record({
      elevation: fc.double({ min: -0.04, max: 0.04, noNaN: true }),
      plan: fc.double({ min: -0.04, max: 0.04, noNaN: true }),
      yokeTwist: fc.double({ min: -1.5, max: 1.5, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(turn, { minLength: joints + 1, maxLength: joints + 1 }), (turns) => {
        const couples = jointCouples(lineOf(turns.map((one) => shaftOf(one))));
        const followed = pinCouples(turns);
        fc.pre(followed.every(({ angle }) => angle > 1e-6));
        let lead = 0;
        followed.forEach(({ angle, re, im }, i) => {
          const { driving, phase } = couples[i]!;
          // each joint lets the pins behind it lead or lag by tan²(β/2) at most, and twice that shows
          lead += angle ** 2;
          expect(Math.hypot(re - driving * Math.cos(phase), im - driving * Math.sin(phase))).toBeLessThan(
            lead * driving + 1e-12,
          );
        });
      }),
      { numRuns: 40 },
    );
  });

  it('grow with the square of the speed where the torque does', () => {
    const line = lineOf([
      shaftOf({ length: 0.1, supports: [{ at: 0 }, { at: 0.08 }] }),
      shaftOf({ length: 0.3, elevation: 0.2, supports: [{ at: 0.05 }, { at: 0.3 }] }),
    ]);
    const radius = (torqueSpeed?: number): number =>
      Math.max(
        ...whirlResponse(line, {
          speeds: [200],
          excitations: [{ kind: 'joints', torque: 0.1, ...(torqueSpeed ? { torqueSpeed } : {}) }],
        }).radius[0]!,
      );
    within(radius(100), 4 * radius(), 1e-9);
  });
});

describe('refusals', () => {
  const line = uniformShaft(['pinned', 'pinned']);
  it.each([
    [{ speeds: [] }, 'whirlResponse: speeds must be one speed or more, got a list of 0'],
    [{ speeds: [NaN] }, 'whirlResponse: speeds[0] must be a finite number of at least 0, got NaN'],
    [
      { speeds: [1], damping: { modal: 0 } },
      'whirlResponse: damping.modal must be a share of critical above 0 and below 1, got 0',
    ],
    [
      { speeds: [1], damping: { bushes: -1 } },
      'whirlResponse: damping.bushes must be a finite number of at least 0, got -1',
    ],
    [
      { speeds: [1], excitations: [{ kind: 'force' as const, shaft: 0, at: 2, force: 1, order: 1 }] },
      "whirlResponse: excitations[0].at must be from 0 to 1 (the shaft's length), got 2",
    ],
    [
      { speeds: [1], excitations: [{ kind: 'force' as const, shaft: 1, at: 0, force: 1, order: 1 }] },
      'whirlResponse: excitations[0].shaft must be a whole number from 0 to 0, got 1',
    ],
  ])('%o', (options, message) => {
    expect(() => whirlResponse(line, options)).toThrow(new RangeError(message));
  });
});
