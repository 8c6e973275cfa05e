import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { criticalSpeeds, MechanismError, type CriticalSpeedOptions, type ShaftLine } from '@sternline/core';
import {
  beamUnit,
  discOf,
  jointOf,
  lineOf,
  shaftOf,
  steel,
  uniformShaft,
  weightlessSteel,
  withoutShear,
  type Hold,
} from '../../support/lines.js';
import { extremeLine, usualLine } from '../../support/random-lines.js';

/** 1 m of 1 mm steel: shear and rotary inertia change its third frequency by 1e-5. */
const slender = { length: 1, outerDiameter: 0.001 };

function speeds(line: ShaftLine, options?: CriticalSpeedOptions): number[] {
  return criticalSpeeds(line, options).map(({ speed }) => speed);
}

function within(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThanOrEqual(relative);
}

function allWithin(actual: readonly number[], expected: readonly number[], relative: number): void {
  expect(actual).toHaveLength(expected.length);
  expected.forEach((value, i) => {
    within(actual[i]!, value, relative);
  });
}

describe('a uniform shaft', () => {
  // λ² of W. T. Thomson, "Theory of Vibration with Applications", Table 9.5-1 and Appendix D,
  // https://digilib.universitaspertamina.ac.id/ebook/Theory%20of%20Vibration%20with%20Applications/files/basic-html/page296.html
  // and page523; the roots λ to four decimals at https://virtual-labs.github.io/exp-vibration-of-beam-iitd/theory.html.
  it.each<[Hold, Hold, number[]]>([
    ['pinned', 'pinned', [Math.PI, 2 * Math.PI, 3 * Math.PI]],
    ['fixed', 'pinned', [3.9266, 7.0685, 10.2101]],
    ['fixed', 'fixed', [4.73, 7.8532, 10.9956]],
    ['fixed', 'free', [1.8751, 4.6941, 7.8548]],
  ])('%s at one end and %s at the other', (left, right, roots) => {
    const line = uniformShaft([left, right], slender);
    const expected = roots.map((root) => root ** 2 * beamUnit(line.shafts[0]!));
    // 1e-4 mesh, 5e-5 from the printed roots, 2e-5 shear
    allWithin(speeds(line, { count: 3 }), expected, 1.7e-4);
  });

  // First four λ per span; two and three spans from Blevins, "Formulas for Natural Frequency and Mode Shape" (from memory)
  // and recomputed from the three-moment determinant, four spans and the clamped pair derived the same way.
  it.each<[number, Hold, number[]]>([
    [2, 'pinned', [3.141593, 3.926602, 6.283185]],
    [3, 'pinned', [3.141593, 3.556408, 4.29753, 6.283185]],
    [4, 'pinned', [3.141593, 3.393231, 3.926602, 4.463324]],
    [2, 'fixed', [3.393231, 4.463325]],
  ])('on %i equal spans, first end %s', (spans, end, roots) => {
    const inner = Array.from({ length: spans - 1 }, (_, i) => ({ at: (i + 1) / spans }));
    const line = uniformShaft([end, 'pinned'], { ...slender, supports: inner });
    const unit = beamUnit(line.shafts[0]!, 1 / spans);
    const expected = roots.map((root) => root ** 2 * unit);
    // 1e-4 mesh, 1e-4 shear and rotary inertia of 0.25 m spans in their second mode
    allWithin(speeds(line, { count: roots.length }), expected, 2e-4);
  });

  // ω √(ml⁴/EI) on two pins a span l apart with a free overhang a; derived with an independent Hermite model of 200 elements.
  it.each([
    [0.1, 9.837101],
    [0.2, 9.608422],
    [0.25, 9.356307],
    [0.3, 8.977512],
    [0.4, 7.807225],
    [0.5, 6.345152],
    [0.75, 3.616428],
    [1, 2.267853],
  ])('with an overhang of %f spans', (overhang, factor) => {
    const shaft = shaftOf({ ...slender, length: 1 + overhang, supports: [{ at: 0 }, { at: 1 }] });
    const [first] = speeds(lineOf([shaft]), { count: 1 });
    within(first!, factor * beamUnit(shaft, 1), 1e-4);
  });

  // ω √(ml⁴/EI) = b² with a spring k at either end, by κ = k l³/EI: lowest root of the symmetric characteristic equation
  // b³ (cosh h sin h + cos h sinh h) = 2 κ cos h cosh h, h = b/2 (derived; roots by scipy.optimize.brentq).
  it.each([
    [1, 1.40253],
    [10, 4.130411],
    [50, 7.205783],
    [100, 8.275695],
    [1000, 9.678716],
  ])('on end springs of %f EI/l³', (ratio, factor) => {
    const bending = steel.youngsModulus * (Math.PI / 64) * slender.outerDiameter ** 4;
    const line = uniformShaft(['free', 'free'], {
      ...slender,
      supports: [
        { at: 0, radialStiffness: ratio * bending },
        { at: 1, radialStiffness: ratio * bending },
      ],
    });
    within(speeds(line, { count: 1 })[0]!, factor * beamUnit(line.shafts[0]!), 1e-4);
  });

  it('of 25 mm and 600 mm: 885.7 rad/s less shear, and twice that at half the size', () => {
    // Shigley, problem on a 25 mm × 600 mm shaft, E 207 GPa, 76 kN/m³: inputs read at
    // https://www.coursehero.com/file/putvuks/For-an-ensemble-of-attachments-gears-pulleys-etc-Rayleighs-method-for-lumped/;
    // 885.71 rad/s by the slender-beam formula. Shear takes (π d/4L)² (E/κG − 1 … + 1)/2 ≈ 0.2 % off it.
    const material = { ...steel, density: 76e3 / 9.81 };
    const full = speeds(uniformShaft(['pinned', 'pinned'], { length: 0.6, outerDiameter: 0.025, material }));
    within(full[0]!, 885.71, 3e-3);
    const half = speeds(uniformShaft(['pinned', 'pinned'], { length: 0.3, outerDiameter: 0.0125, material }));
    allWithin(
      half,
      full.map((speed) => 2 * speed),
      1e-9,
    );
  });

  it('as a tube is faster than the solid one by √(1 + (di/do)²)', () => {
    // derived: ω goes with the radius of gyration
    const [solid] = speeds(uniformShaft(['pinned', 'pinned'], slender), { count: 1 });
    const [tube] = speeds(uniformShaft(['pinned', 'pinned'], { ...slender, innerDiameter: 0.0008 }), {
      count: 1,
    });
    within(tube! / solid!, 1.280625, 1e-5);
  });

  it('as a tube driveshaft follows the beam, not its mass lumped at mid-span', () => {
    // 3 in × 1/8 in × 48 in, E 29e6 psi: 8262 rpm as a uniform beam without shear; a printed answer of 5800 rpm lumps the
    // whole mass at mid-span, https://tutorsglobe.com/question/calculate-the-critical-speed-of-the-shaft-assume-the-shaft-51462760.aspx
    const inch = 0.0254;
    const psi = 6894.757;
    const material = {
      ...steel,
      youngsModulus: 29e6 * psi,
      shearModulus: 11.5e6 * psi,
      density: 0.283 * 27679.905,
    };
    const line = uniformShaft(['pinned', 'pinned'], {
      length: 48 * inch,
      outerDiameter: 3 * inch,
      innerDiameter: 2.75 * inch,
      material,
    });
    const rpm = (speeds(line, { count: 1 })[0]! * 30) / Math.PI;
    // a thin tube this stubby loses 1 % to shear
    within(rpm, 8262, 2e-2);
    expect(rpm).toBeLessThan(8262 * 1.002);
  });
});

describe('a disc on a shaft', () => {
  const jeffcott = (mass: number, parts: object): ShaftLine =>
    uniformShaft(['pinned', 'pinned'], {
      material: weightlessSteel,
      ...parts,
      discs: [discOf({ at: 0.25, mass })],
    });

  it('in the middle: 566.24 rad/s', () => {
    // 10 kg, 30 mm, 500 mm, E 210 GPa (inputs: https://byjus.com/question-answer/a-flexible-rotor-shafts-system-comprises-a-10-kg-rotor-disc-placed-in-the-middle);
    // √(48EI/mL³) = 566.243. Shear takes 6 EI/(κGA L²) = 0.4 % off it.
    const material = { ...weightlessSteel, youngsModulus: 210e9 };
    const line = jeffcott(10, { length: 0.5, outerDiameter: 0.03, material });
    within(speeds(withoutShear(line), { count: 1 })[0]!, 566.243, 1e-5);
    const shear = (6 * 210e9 * 0.03 ** 2) / 16 / (0.886 * steel.shearModulus * 0.5 ** 2);
    within(speeds(line, { count: 1 })[0]!, 566.243 * (1 - shear), 1e-4);
  });

  // ω √(EI/mL⁴)⁻¹ with disc mass over shaft mass; exact derived by an independent Hermite model, Dunkerley 1/ω² = 1/π⁴ + μ/48
  // below, Rayleigh 48/(μ + 17/35) above.
  it.each([
    [0.5, 6.965962, 6.953395, 6.978227],
    [1, 5.679581, 5.670542, 5.683986],
    [2, 4.393112, 4.388133, 4.394354],
  ])('of %f shaft masses at mid-span', (ratio, exact, dunkerley, rayleigh) => {
    const mass = ratio * steel.density * (Math.PI / 4) * slender.outerDiameter ** 2;
    const line = uniformShaft(['pinned', 'pinned'], { ...slender, discs: [discOf({ at: 0.5, mass })] });
    const factor = speeds(line, { count: 1 })[0]! / beamUnit(line.shafts[0]!);
    within(factor, exact, 1e-4);
    expect(factor).toBeGreaterThan(dunkerley);
    expect(factor).toBeLessThan(rayleigh);
  });

  // 1/k = 1/ks + 1/(2 kb): ks 180.64158 kN/m, 0.5 kg (derived)
  it.each([
    [1e4, 189.77],
    [1e5, 435.693],
    [1e6, 575.634],
  ])('on two bushes of %f N/m', (radialStiffness, expected) => {
    const length = 0.3;
    const bending = (180641.58 * length ** 3) / 48;
    const outerDiameter = ((bending * 64) / (Math.PI * steel.youngsModulus)) ** 0.25;
    const line = uniformShaft(['free', 'free'], {
      length,
      outerDiameter,
      material: weightlessSteel,
      supports: [
        { at: 0, radialStiffness },
        { at: length, radialStiffness },
      ],
      discs: [discOf({ at: length / 2, mass: 0.5 })],
    });
    within(speeds(withoutShear(line), { count: 1 })[0]!, expected, 1e-5);
  });

  it('on a stepped shaft: 3384 rpm', () => {
    // Ugural, "Mechanical Design", Example 9.6: δ = 3WL³/256EI for a middle half of twice the inertia (formula read at
    // https://holooly.com/solutions-v20/…/critical-speed-of-a-stepped-shaft…); W 400 N, L 1 m, I 0.3e-6, E 200 GPa: 3383.85 rpm
    const material = { ...weightlessSteel, youngsModulus: 200e9 };
    const thin = ((0.3e-6 * 64) / Math.PI) ** 0.25;
    const thick = thin * 2 ** 0.25;
    const outer = { length: 0.25, outerDiameter: thin, material };
    const line = lineOf(
      [
        shaftOf({ ...outer, supports: [{ at: 0 }] }),
        shaftOf({
          length: 0.5,
          outerDiameter: thick,
          material,
          discs: [discOf({ at: 0.25, mass: 400 / 9.81 })],
        }),
        shaftOf({ ...outer, supports: [{ at: 0.25 }] }),
      ],
      [jointOf({ kind: 'rigid' }), jointOf({ kind: 'rigid' })],
    );
    within((speeds(withoutShear(line), { count: 1 })[0]! * 30) / Math.PI, 3383.85, 1e-5);
  });

  it('and another: 124.68 and 461.5 rad/s', () => {
    // Shigley, "Mechanical Engineering Design", 9th ed., Example 7-5 (inputs read at
    // https://digilib.universitaspertamina.ac.id/ebook/Shigley's%20Mechanical%20Engineering%20Design/files/basic-html/page411.html):
    // 1 in × 31 in, 35 lbf at 7 in, 55 lbf at 20 in, E 30 Mpsi, massless; both roots of its influence coefficients recomputed
    const inch = 0.0254;
    const pound = 0.45359237 * (9.80665 / (386.1 * inch));
    const material = { ...weightlessSteel, youngsModulus: 30e6 * 6894.757 };
    const line = uniformShaft(['pinned', 'pinned'], {
      length: 31 * inch,
      outerDiameter: inch,
      material,
      discs: [discOf({ at: 7 * inch, mass: 35 * pound }), discOf({ at: 20 * inch, mass: 55 * pound })],
    });
    allWithin(speeds(withoutShear(line), { count: 2 }), [124.67924, 461.54838], 1e-5);
  });
});

describe('gyroscopic effect', () => {
  const massless = weightlessSteel;

  // J. P. Den Hartog, "Mechanical Vibrations", K² = (6 − 2/D) + √((6 − 2/D)² + 12/D), thin disc, D = Id/(ml²) (formula from
  // memory, re-derived). D = 0 is √3 without gyroscopic effect.
  it.each([
    [0, 3],
    [0.05, 3.363083],
    [0.1, 3.776389],
    [0.25, 5.211103],
    [1 / 3, 6],
    [0.5, 7.291503],
    [1, 9.291503],
  ])('on a cantilever with a thin disc, D %f', (effect, square) => {
    const mass = 0.2;
    const length = 0.3;
    const shaft = shaftOf({
      length,
      outerDiameter: 0.006,
      material: massless,
      supports: [{ at: 0, fixesSlope: true }],
      discs: [
        discOf({
          at: length,
          mass,
          diametralInertia: effect * mass * length ** 2,
          polarInertia: 2 * effect * mass * length ** 2,
        }),
      ],
    });
    const bending = steel.youngsModulus * (Math.PI / 64) * 0.006 ** 4;
    const [first] = speeds(withoutShear(lineOf([shaft])), { count: 1 });
    within(first!, Math.sqrt((square * bending) / (mass * length ** 3)), 1e-5);
  });

  it('moves a 5 kg disc from 184.29 to 196.17 rad/s', () => {
    // d 20 mm, l 0.3 m, 5 kg, radius 0.1 m, E 207 GPa: derived with the formula above, and its two-freedom form
    const disc = { at: 0.3, mass: 5, diametralInertia: 0.0125 };
    const line = (polarInertia: number): ShaftLine =>
      uniformShaft(['fixed', 'free'], {
        length: 0.3,
        outerDiameter: 0.02,
        material: massless,
        discs: [discOf({ ...disc, polarInertia })],
      });
    within(speeds(withoutShear(line(0)), { count: 1 })[0]!, 184.2911, 1e-5);
    within(speeds(withoutShear(line(0.025)), { count: 1 })[0]!, 196.1662, 1e-5);
  });

  const overhung = (propeller: Partial<ShaftLine>, polarInertia = 1.2e-4, fixesSlope = false): ShaftLine => ({
    ...lineOf([
      shaftOf({
        length: 0.3,
        outerDiameter: 0.008,
        material: massless,
        supports: [fixesSlope ? { at: 0, fixesSlope } : { at: 0 }, { at: 0.25 }],
        discs: [discOf({ name: 'propeller', at: 0.3, mass: 0.15, diametralInertia: 6e-5, polarInertia })],
      }),
    ]),
    ...propeller,
  });
  const blades = { blades: 4, diameter: 0.048, pitch: 0.05 };

  // R. Woytowich, "Calculation of Propeller Shaft Whirling Frequencies", J. Ship Research 23(4), 1979, 235–241: a11 = b³/3EI + b²l/3EI,
  // a12 = b²/2EI + bl/3EI, a22 = b/EI + l/3EI (l/4 with the forward end fixed), water +25 %; figures derived with them for
  // b 50 mm, l 250 mm, d 8 mm, 0.15 kg, Id 6e-5, Ip 1.2e-4 kg·m², E 207 GPa.
  it.each([
    ['forward', overhung({}), 1164.88],
    ['without polar inertia', overhung({}, 0), 964.975],
    ['forward in water', overhung({ propeller: blades }), 1041.901],
    ['forward with the far end clamped', overhung({}, 1.2e-4, true), 1314.022],
  ])('on an overhung propeller, %s', (_, line, expected) => {
    within(speeds(withoutShear(line), { count: 1 })[0]!, expected, 1e-5);
  });

  it.each([1, 2, 4])(
    'backward on an overhung propeller at order %i: both roots of the two-freedom form',
    (order) => {
      // derived: det(I − ω² A diag(m, Id + Ip/n)) = 0 with the flexibilities above
      const [a11, a12, a22] = [6.006754e-6, 1.301463e-4, 3.203602e-3];
      const [mass, inertia] = [0.15, 6e-5 + 1.2e-4 / order];
      const trace = a11 * mass + a22 * inertia;
      const product = mass * inertia * (a11 * a22 - a12 ** 2);
      const roots = [1, -1].map((sign) =>
        Math.sqrt((trace - sign * Math.sqrt(trace ** 2 - 4 * product)) / (2 * product)),
      );
      const found = speeds(withoutShear(overhung({})), { whirl: 'backward', order, count: 2 });
      allWithin(
        found,
        roots.sort((a, b) => a - b).map((root) => root / order),
        1e-5,
      );
    },
  );

  it('takes the second mode away from a thin disc in synchronous forward whirl', () => {
    // The two-freedom form above has one positive root; the next lies with the weightless shaft itself, far away.
    const [first, second] = speeds(withoutShear(overhung({})), { count: 2 });
    within(first!, 1164.88, 1e-5);
    expect(second).toBeGreaterThan(1e6);
  });
});

interface HingeCase {
  readonly line: ShaftLine;
  readonly results: readonly { whirl: 'forward' | 'backward'; order: number; speeds: number[] }[];
}

describe('jointed lines against an independent spectral model (tests/reference/whirl/hinge-lines.py)', () => {
  const file = new URL('../../reference/whirl/hinge-lines.json', import.meta.url);
  const cases = JSON.parse(readFileSync(file, 'utf8')) as HingeCase[];
  const rows = cases.flatMap(({ line, results }) =>
    results.map((result) => ({ name: line.name, line, ...result })),
  );
  it.each(rows)('$name, $whirl, order $order', ({ line, whirl, order, speeds: expected }) => {
    allWithin(speeds(line, { whirl, order }), expected, 1e-4);
  });
});

describe('laws', () => {
  /** Beam theory has nothing to say on a line five times as long as thick. */
  const isLine = ({ shafts }: ShaftLine): boolean =>
    Math.max(...shafts.map((shaft) => shaft.outerDiameter)) <
    0.2 * shafts.reduce((sum, shaft) => sum + shaft.length, 0);
  const anyLine = fc.oneof(usualLine, extremeLine).filter(isLine);

  it('order n without gyroscopic effect is the nth part', () => {
    const material = { ...weightlessSteel };
    const line = uniformShaft(['pinned', 'pinned'], { material, discs: [discOf({ at: 0.3 })] });
    const [once] = speeds(line, { count: 1 });
    within(speeds(line, { order: 2, count: 1 })[0]!, once! / 2, 1e-9);
    within(speeds(line, { order: 4, count: 1 })[0]!, once! / 4, 1e-9);
  });

  it('forward is never below backward, and high orders lie between', () => {
    fc.assert(
      fc.property(anyLine, (line) => {
        const forward = speeds(line);
        const backward = speeds(line, { whirl: 'backward' });
        const still = speeds(line, { order: 1e6 }).map((speed) => speed * 1e6);
        still.forEach((speed, i) => {
          // meshes of the three may differ, each within 1e-4
          expect(forward[i] ?? Infinity).toBeGreaterThanOrEqual(speed * (1 - 2e-4));
          expect(backward[i]).toBeLessThanOrEqual(speed * (1 + 2e-4));
        });
      }),
      { numRuns: 150, seed: 1 },
    );
  });

  it('speeds ascend, are finite, and shapes are scaled to 1', () => {
    fc.assert(
      fc.property(anyLine, fc.constantFrom<'forward' | 'backward'>('forward', 'backward'), (line, whirl) => {
        const modes = criticalSpeeds(line, { whirl, count: 6 });
        expect(modes).toHaveLength(6);
        modes.forEach(({ speed, shape }, i) => {
          expect(Number.isFinite(speed) && speed > 0).toBe(true);
          expect(speed).toBeGreaterThanOrEqual(modes[i - 1]?.speed ?? 0);
          expect(Math.max(...shape.displacement)).toBeCloseTo(1, 12);
          expect(Math.min(...shape.displacement)).toBeGreaterThanOrEqual(-1);
        });
      }),
      { numRuns: 200, seed: 2 },
    );
  });

  it('a line s times the size has speeds 1/s, discs s³ and bushes s times theirs', () => {
    const scale = 3;
    fc.assert(
      fc.property(usualLine, (line) => {
        const larger: ShaftLine = {
          ...line,
          shafts: line.shafts.map((shaft) => ({
            ...shaft,
            length: shaft.length * scale,
            outerDiameter: shaft.outerDiameter * scale,
            innerDiameter: shaft.innerDiameter * scale,
            supports: shaft.supports.map(({ radialStiffness, ...support }) => ({
              ...support,
              at: support.at * scale,
              ...(radialStiffness === undefined ? {} : { radialStiffness: radialStiffness * scale }),
            })),
            discs: shaft.discs.map((disc) => ({
              ...disc,
              at: disc.at * scale,
              mass: disc.mass * scale ** 3,
              polarInertia: disc.polarInertia * scale ** 5,
              diametralInertia: disc.diametralInertia * scale ** 5,
            })),
          })),
          joints: line.joints.map(({ bendingStiffness = 0, ...joint }) => ({
            ...joint,
            mass: joint.mass * scale ** 3,
            bendingStiffness: bendingStiffness * scale ** 3,
          })),
        };
        // rounding of the two meshes may put one element more into one of them
        allWithin(
          speeds(larger),
          speeds(line).map((speed) => speed / scale),
          1e-4,
        );
      }),
      { numRuns: 60, seed: 3 },
    );
  });

  it('a further support lowers no mode (Courant)', () => {
    fc.assert(
      fc.property(usualLine, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (line, share) => {
        const [first, ...rest] = line.shafts;
        const held = {
          ...first!,
          supports: [...first!.supports, { at: share * first!.length, radialStiffness: 1e5 }],
        };
        const before = speeds(line, { whirl: 'backward' });
        const after = speeds({ ...line, shafts: [held, ...rest] }, { whirl: 'backward' });
        after.forEach((speed, i) => {
          expect(speed).toBeGreaterThanOrEqual(before[i]! * (1 - 1e-4));
        });
      }),
      { numRuns: 100, seed: 4 },
    );
  });

  it('lies above Dunkerley and below Rayleigh for any discs on two pins', () => {
    const disc = fc.record({
      at: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
      mass: fc.double({ min: 0.001, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(disc, { minLength: 1, maxLength: 4 }), (discs) => {
        const line = uniformShaft(['pinned', 'pinned'], {
          ...slender,
          discs: discs.map((one) => discOf(one)),
        });
        const [first] = speeds(line, { count: 1 });
        const bending = steel.youngsModulus * (Math.PI / 64) * slender.outerDiameter ** 4;
        const perLength = steel.density * (Math.PI / 4) * slender.outerDiameter ** 2;
        const flexibility = discs.reduce(
          (sum, { at, mass }) => sum + (mass * (at * (1 - at)) ** 2) / (3 * bending),
          0,
        );
        const dunkerley = 1 / Math.sqrt(perLength / (Math.PI ** 4 * bending) + flexibility);
        const inertia =
          perLength / 2 + discs.reduce((sum, { at, mass }) => sum + mass * Math.sin(Math.PI * at) ** 2, 0);
        const rayleigh = Math.sqrt((Math.PI ** 4 * bending) / 2 / inertia);
        // shear of this shaft takes at most 1e-5 off
        expect(first).toBeGreaterThan(dunkerley * (1 - 1e-5));
        expect(first).toBeLessThan(rayleigh * (1 + 1e-4));
      }),
      { numRuns: 60, seed: 5 },
    );
  });

  it('twin lines behind a pinned hinge have each mode twice', () => {
    const twin = shaftOf({ length: 0.3, supports: [{ at: 0 }, { at: 0.3 }] });
    const single = speeds(lineOf([twin]), { count: 3 });
    const double = speeds(lineOf([twin, { ...twin }]), { count: 6 });
    allWithin(
      double,
      single.flatMap((speed) => [speed, speed]),
      1e-4,
    );
  });

  it('asks for no more than it is given: the first two of five are those of two', () => {
    const line = uniformShaft(['pinned', 'free'], { supports: [{ at: 0.7 }], discs: [discOf({ at: 1 })] });
    allWithin(speeds(line, { count: 5 }).slice(0, 2), speeds(line, { count: 2 }), 1e-4);
  });
});

describe('mode shapes', () => {
  it('of a pinned shaft is a half sine', () => {
    const line = uniformShaft(['pinned', 'pinned'], slender);
    const [first] = criticalSpeeds(line, { count: 1 });
    const { at, displacement, slope } = first!.shape;
    const peak = Math.max(...Array.from(at, (x) => Math.sin(Math.PI * x)));
    at.forEach((x, i) => {
      expect(displacement[i]).toBeCloseTo(Math.sin(Math.PI * x) / peak, 4);
      expect(slope[i]).toBeCloseTo((Math.PI * Math.cos(Math.PI * x)) / peak, 3);
    });
  });

  it('lists each shaft from end to end, and breaks its slope at a hinge only', () => {
    const half = { length: 0.5, outerDiameter: 0.005 };
    const shafts = [
      shaftOf({ ...half, supports: [{ at: 0, fixesSlope: true }] }),
      shaftOf({ ...half, supports: [{ at: 0.5, fixesSlope: true }] }),
    ];
    for (const kind of ['universal', 'rigid'] as const) {
      const { shape } = criticalSpeeds(lineOf(shafts, [jointOf({ kind })]), { count: 1 })[0]!;
      const after = shape.shaft.indexOf(1);
      expect([shape.at[after - 1], shape.at[after]]).toEqual([0.5, 0]);
      expect([shape.station[after - 1], shape.station[after]]).toEqual([0.5, 0.5]);
      expect(shape.displacement[after]).toBe(shape.displacement[after - 1]);
      // by symmetry the slope turns its sign at a hinge and vanishes at a rigid joint
      if (kind === 'rigid') expect(shape.slope[after]).toBeCloseTo(0, 6);
      else expect(shape.slope[after]).toBeCloseTo(-shape.slope[after - 1]!, 6);
      expect(Math.abs(shape.slope[after]!) > 1).toBe(kind === 'universal');
    }
  });
});

describe('refusals', () => {
  const line = uniformShaft(['pinned', 'pinned']);

  it.each([
    [{ order: 0 }, 'criticalSpeeds: order must be a finite number greater than 0, got 0'],
    [{ order: NaN }, 'criticalSpeeds: order must be a finite number greater than 0, got NaN'],
    [{ count: 0 }, 'criticalSpeeds: count must be a whole number from 1 to 100, got 0'],
    [{ count: 2.5 }, 'criticalSpeeds: count must be a whole number from 1 to 100, got 2.5'],
    [
      { whirl: 'sideways' as 'forward' },
      `criticalSpeeds: whirl must be 'forward' or 'backward', got "sideways"`,
    ],
  ])('%o', (options, message) => {
    expect(() => criticalSpeeds(line, options)).toThrow(new RangeError(message));
  });

  it.each([
    ['a shaft on one bush', lineOf([shaftOf({ supports: [{ at: 0.5 }] })])],
    ['a shaft on none', lineOf([shaftOf()])],
    [
      'two shafts between hinges',
      lineOf([
        shaftOf({ supports: [{ at: 0 }, { at: 1 }] }),
        shaftOf(),
        shaftOf(),
        shaftOf({ supports: [{ at: 0 }, { at: 1 }] }),
      ]),
    ],
  ])('%s is a mechanism', (_, loose) => {
    expect(() => criticalSpeeds(loose)).toThrow(MechanismError);
    expect(() => criticalSpeeds(loose)).toThrow(
      /^criticalSpeeds: line must hold every part in place, got a line whose shaft \d \("shaft"\) is free to move$/,
    );
  });
});
