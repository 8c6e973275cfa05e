import {
  angularAcceleration,
  chatterSpeed,
  exampleLine,
  inertiaBehind,
  inertiaTorque,
  type ShaftLine,
} from '@sternline/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineOf } from '../line/line-of.js';
import { single, turning, withDiscs } from './turning.js';

/** A flywheel of 12 kg on a radius of gyration of 0.1 m, on shafts that weigh next to nothing beside it. */
const flywheel = withDiscs(single(20), [0, 0.12]);

describe('inertiaBehind', () => {
  it('adds shafts, discs and half of the joint', () => {
    const line: ShaftLine = exampleLine();
    // ρ L π D⁴/32 of the shaft, the dry disc, half of the joint: by hand.
    const shaft = (7900 * 0.376 * Math.PI * 0.005 ** 4) / 32;
    const dry = inertiaBehind(line, { joint: 0, medium: 'air' });
    expect(Math.abs(dry / (shaft + 4.4e-6 + 2e-7) - 1)).toBeLessThan(1e-12);
    const wet = inertiaBehind(line, { joint: 0 });
    expect(Math.abs(wet / (shaft + 1.25 * 4.4e-6 + 2e-7) - 1)).toBeLessThan(1e-12);
  });

  it('counts a tube by its wall', () => {
    const line = lineOf([{}, {}]);
    const tube = {
      ...line,
      shafts: [line.shafts[0]!, { ...line.shafts[1]!, innerDiameter: 0.004 }],
    };
    const wall = 1 - 0.8 ** 4;
    const solid = inertiaBehind(line, { joint: 0 });
    expect(Math.abs(inertiaBehind(tube, { joint: 0 }) / solid / wall - 1)).toBeLessThan(1e-12);
  });

  it('refuses a joint that the line does not have', () => {
    expect(() => inertiaBehind(exampleLine(), { joint: 1 })).toThrow(
      new RangeError('inertiaBehind: joint must be a whole number from 0 to 0, got 1'),
    );
    expect(() => inertiaBehind(lineOf([{}]), { joint: 0 })).toThrow(
      new RangeError('inertiaBehind: joint must be a joint of the line, which has none, got 0'),
    );
  });
});

describe('inertiaTorque', () => {
  // Khurmi and Gupta: 20°, 1500 rpm, 12 kg on 0.1 m: 371 N·m there, rounded on the way; 370.01 exactly. From memory.
  it('gives a textbook answer', () => {
    const torque = inertiaTorque(flywheel, { joint: 0, speed: 50 * Math.PI });
    expect(Math.abs(torque - 370.01)).toBeLessThan(0.006);
  });

  // Derivative of the kinetic energy behind the joint, pins followed in space: turning.py.
  it.each(turning.chains.map((chain, i) => [i, chain] as const))(
    'agrees for chain %i with the kinetic energy of what turns',
    (i, { shafts, joints }) => {
      const { discs, joint, behindJoint, atPropeller } = turning.inertia[i]!;
      const line = withDiscs(lineOf(shafts, joints), discs);
      const got = inertiaTorque(line, { joint, speed: 1, medium: 'air' });
      expect(Math.abs(got - behindJoint)).toBeLessThan(1e-13 + 1e-7 * behindJoint);
      const { inertiaTorque: atEnd } = chatterSpeed(line, { joint, torque: { constant: 1 }, medium: 'air' });
      expect(Math.abs(atEnd - atPropeller)).toBeLessThan(1e-13 + 1e-7 * atPropeller);
    },
  );

  it('refuses a speed that is none', () => {
    expect(() => inertiaTorque(flywheel, { joint: 0, speed: 0 })).toThrow(
      new RangeError('inertiaTorque: speed must be a finite number greater than 0, got 0'),
    );
  });
});

describe('chatterSpeed', () => {
  it('is where the inertia torque equals the mean torque', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 1e-4, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        (angle, constant, portion) => {
          const line = single(angle);
          const { inertiaTorque: per } = chatterSpeed(line, { joint: 0, torque: { constant } });
          const coefficient = portion * per;
          const got = chatterSpeed(line, { joint: 0, torque: { constant, coefficient } });
          const mean = constant + coefficient * got.speed ** 2;
          const peak =
            inertiaBehind(line, { joint: 0 }) * angularAcceleration(line, { speed: got.speed }).peak;
          expect(got.chatters).toBe('above');
          expect(Math.abs(peak / mean - 1)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it('depends on no speed where the load grows as the inertia torque does', () => {
    const { inertiaTorque: per } = chatterSpeed(flywheel, { joint: 0, torque: { constant: 1 } });
    const heavy = chatterSpeed(flywheel, { joint: 0, torque: { coefficient: 1.01 * per } });
    const light = chatterSpeed(flywheel, { joint: 0, torque: { coefficient: 0.99 * per } });
    expect([heavy.chatters, heavy.speed]).toEqual(['never', Infinity]);
    expect([light.chatters, light.speed]).toEqual(['always', 0]);
  });

  it('is never for a straight line', () => {
    const got = chatterSpeed(lineOf([{}, {}]), { joint: 0, torque: { constant: 0.01 } });
    expect([got.chatters, got.speed]).toEqual(['never', Infinity]);
  });

  it('starts later dry than wet, since water adds to the inertia alone', () => {
    const torque = { constant: 0.004 };
    const dry = chatterSpeed(exampleLine(), { joint: 0, torque, medium: 'air' });
    const wet = chatterSpeed(exampleLine(), { joint: 0, torque });
    expect(Math.abs(dry.speed / wet.speed - Math.sqrt(wet.inertia / dry.inertia))).toBeLessThan(1e-9);
  });

  it('refuses a law that is none', () => {
    const ask = (torque: { constant?: number; coefficient?: number }) => () =>
      chatterSpeed(flywheel, { joint: 0, torque });
    expect(ask({})).toThrow(
      new RangeError(
        'chatterSpeed: torque must be given as a constant, a coefficient or both, got undefined',
      ),
    );
    expect(ask({ constant: -1 })).toThrow(
      new RangeError('chatterSpeed: torque.constant must be a finite number of at least 0, got -1'),
    );
    expect(ask({ coefficient: NaN })).toThrow(
      new RangeError('chatterSpeed: torque.coefficient must be a finite number of at least 0, got NaN'),
    );
  });
});
