import { describe, expect, it } from 'vitest';
import {
  exampleLine,
  torsionalModes,
  torsionalResponse,
  type ShaftLine,
  type TorsionalOrder,
} from '@sternline/core';
import { discOf, jointOf, lineOf, shaftOf, weightlessSteel } from '../../support/lines.js';
import { DEGREE } from '../line/line-of.js';
import { lineOfChain, referenceChains, rotor } from './chains.js';

function within(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThanOrEqual(relative);
}

const order = (orders: readonly TorsionalOrder[], number: number) =>
  orders.find((one) => one.order === number)!;

/** Rotor J₁, joint of stiffness k at an angle, disc J₂ on weightless shafts. */
function twoInertias(angle: number, { first = 2e-5, second = 6e-5, spring = 40 } = {}): ShaftLine {
  const shaft = { length: 0.1, outerDiameter: 0.05, material: weightlessSteel };
  const line = lineOf(
    [
      shaftOf(shaft),
      shaftOf({ ...shaft, elevation: angle, discs: [discOf({ at: 0.1, polarInertia: second })] }),
    ],
    [jointOf({ torsionalStiffness: spring })],
  );
  return { ...line, motor: rotor(first) };
}

describe('torsionalResponse', () => {
  it.each(referenceChains.filter(({ jointTorque }) => jointTorque !== undefined))(
    'agrees with a fine chain in scipy: $name',
    (chain) => {
      const { orders } = torsionalResponse(lineOfChain(chain), {
        speed: chain.frequency / 2,
        damping: chain.damping,
      });
      const { angle, torque } = order(orders, 2);
      const places = torsionalResponse(lineOfChain(chain), { speed: chain.frequency / 2 }).shaft;
      const atJoints = Array.from(torque).filter(
        (_, i) => i + 1 < places.length && places[i] !== places[i + 1],
      );
      chain.jointTorque!.forEach((expected, i) => {
        within(atJoints[i]!, expected, 1e-5);
      });
      within(angle[0]!, chain.rotorAngle!, 1e-5);
      within(angle.at(-1)!, chain.endAngle!, 1e-5);
    },
  );

  it.each([20, 400, 800, 1500])('of two inertias on a spring at %i rad/s: a closed form', (speed) => {
    // derived: T = E / (1/k* − 1/(J ω²)), J = J₁J₂/(J₁ + J₂), k* = k (1 + 2iζ), E = k² of order 2
    const { orders } = torsionalResponse(twoInertias(10 * DEGREE), { speed, damping: 0.03 });
    const reduced = (2e-5 * 6e-5) / 8e-5;
    [2, 4].forEach((number) => {
      const lead = Math.tan(5 * DEGREE) ** number * (2 / number);
      const flexibility = 1 / (40 * (1 + 0.06 ** 2));
      const real = flexibility - 1 / (reduced * (number * speed) ** 2);
      const expected = lead / Math.hypot(real, 0.06 * flexibility);
      // 50 mm shafts give way 1e-4 of what the spring does
      within(order(orders, number).torque[1]!, expected, 5e-3);
    });
  });

  it('is the inertia torque of a rigid line when slow', () => {
    // derived: J₁J₂/(J₁ + J₂) · ω² k, and the two sides share the error by their inertias
    const { orders } = torsionalResponse(twoInertias(10 * DEGREE), { speed: 1 });
    const { torque, angle } = order(orders, 2);
    const lead = Math.tan(5 * DEGREE) ** 2;
    within(torque[1]!, ((2e-5 * 6e-5) / 8e-5) * 4 * lead, 1e-4);
    within(angle[0]!, 0.75 * lead, 1e-4);
    within(angle.at(-1)!, 0.25 * lead, 1e-4);
  });

  it('peaks at 1/2ζ where an order meets the mode', () => {
    const line = twoInertias(10 * DEGREE);
    const [mode] = torsionalModes(line, { count: 1 });
    const { orders } = torsionalResponse(line, { speed: mode!.frequency / 2, damping: 0.01 });
    // derived: at resonance T = E k / 2ζ √(1 + 4ζ²) with k the spring with the shafts' give
    const spring = mode!.frequency ** 2 * ((2e-5 * 6e-5) / 8e-5);
    within(order(orders, 2).torque[1]!, (Math.tan(5 * DEGREE) ** 2 * spring) / 0.02, 1e-3);
  });

  it('of the blades, when slow, shares their torque by inertia', () => {
    // derived: the free line turns as one, so that J₁/(J₁ + 1.25 J₂) of the push passes the joint
    const propeller = { blades: 3, diameter: 0.04, pitch: 0.04 };
    const { orders, jointSwing } = torsionalResponse(
      { ...twoInertias(0), propeller },
      { speed: 1, torque: 0.3, bladeShare: 0.2 },
    );
    expect(orders.map((one) => [one.order, one.source])).toEqual([[3, 'blades']]);
    within(jointSwing[0]!, (0.06 * 2e-5) / (2e-5 + 7.5e-5), 1e-4);
  });

  it.each([50, 300, 420, 900])('of the blades on two inertias at %i rad/s: a closed form', (speed) => {
    // derived: T = J₁ω² F k* / ((k* − ω²J₁)(k* − ω²J₂) − k*²) = F / (ω²J₂/k* − 1 − J₂/J₁), k* = k (1 + 2iζ)
    const propeller = { blades: 3, diameter: 0.04, pitch: 0.04, wetInertiaFactor: 1 };
    const { jointSwing } = torsionalResponse(
      { ...twoInertias(0), propeller },
      { speed, torque: 0.5, bladeShare: 0.1, damping: 0.04 },
    );
    const flexibility = ((3 * speed) ** 2 * 6e-5) / (40 * (1 + 0.08 ** 2));
    const expected = 0.05 / Math.hypot(flexibility - 1 - 3, 0.08 * flexibility);
    // 50 mm shafts give way 1e-4 of what the spring does
    within(jointSwing[0]!, expected, 5e-3);
  });

  it('is nought on a straight line without blades', () => {
    const { orders, jointSwing, shaftSwing } = torsionalResponse(twoInertias(0), { speed: 300 });
    expect(orders).toEqual([]);
    expect([...jointSwing, ...shaftSwing]).toEqual([0, 0, 0]);
  });

  it('cancels where two equal joints stand in phase and nothing lies between', () => {
    // the middle shaft alone swings: its inertia is 1e-6 of the rest
    const shaft = { length: 0.1, outerDiameter: 0.01, material: { ...weightlessSteel, density: 1e-9 } };
    const middle = { ...shaft, elevation: 8 * DEGREE };
    const line = (yokeTwist: number): ShaftLine => ({
      ...lineOf([
        shaftOf(shaft),
        shaftOf({ ...middle, yokeTwist }),
        shaftOf({ ...shaft, discs: [discOf({ at: 0.1, polarInertia: 1e-5 })] }),
      ]),
      motor: rotor(1e-5),
    });
    const swing = (yokeTwist: number) => torsionalResponse(line(yokeTwist), { speed: 300 }).jointSwing[0]!;
    expect(swing(0)).toBeLessThan(1e-6 * swing(Math.PI / 2));
  });

  it('turns down what is out of its domain', () => {
    const line = exampleLine();
    expect(() => torsionalResponse(line, { speed: 0 })).toThrow(
      'torsionalResponse: speed must be a finite number greater than 0, got 0',
    );
    expect(() => torsionalResponse(line, { speed: 1, damping: 0 })).toThrow(
      'torsionalResponse: damping must be a share of critical above 0 and below 1, got 0',
    );
    expect(() => torsionalResponse(line, { speed: 1, torque: -1 })).toThrow(
      'torsionalResponse: torque must be a finite number of at least 0, got -1',
    );
    expect(() => torsionalResponse(line, { speed: 1, bladeShare: NaN })).toThrow(
      'torsionalResponse: bladeShare must be a finite number of at least 0, got NaN',
    );
  });
});
