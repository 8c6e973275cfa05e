import { speedRatio } from '@sternline/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEGREE, lineOf } from '../line/line-of.js';
import { chains } from './chains.js';

const turn = Float64Array.from({ length: 256 }, (_, i) => (2 * Math.PI * i) / 256);
const largest = (values: Float64Array): number =>
  values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);

describe('speedRatio of one joint', () => {
  // Max 1/cos β, min cos β, and which yoke position gives which: https://tickerdossier.com/wiki/u-joint and
  // https://mechanics.stackexchange.com/questions/30314. They count from the pin in the plane: 90° from here.
  it.each([1e-6, 1, 14, 30, 45, 80, 89])('at %f° is cos β at 0, 1/cos β a quarter turn on', (angle) => {
    const line = lineOf([{}, { elevation: angle * DEGREE }]);
    const [start, quarter, half] = speedRatio(line, [0, Math.PI / 2, Math.PI]);
    expect(Math.abs(start! / Math.cos(angle * DEGREE) - 1)).toBeLessThan(1e-12);
    expect(Math.abs(quarter! * Math.cos(angle * DEGREE) - 1)).toBeLessThan(1e-12);
    expect(Math.abs(half! / start! - 1)).toBeLessThan(1e-12);
  });

  // ω2/ω1 = cos β / (1 − sin²β cos²θ1), θ1 from the other yoke position: https://tickerdossier.com/wiki/u-joint
  it('follows the printed law over a turn, in any plane', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 80 }), fc.integer({ min: -180, max: 180 }), (angle, plane) => {
        const beta = angle * DEGREE;
        const to = {
          elevation: Math.asin(Math.sin(beta) * Math.sin(plane * DEGREE)),
          plan: Math.atan2(Math.sin(beta) * Math.cos(plane * DEGREE), Math.cos(beta)),
        };
        const ratios = speedRatio(lineOf([{}, to]), turn);
        const law = turn.map((theta) =>
          angle === 0 ? 1 : Math.cos(beta) / (1 - Math.sin(beta) ** 2 * Math.cos(theta + Math.PI / 2) ** 2),
        );
        expect(largest(ratios.map((ratio, i) => ratio / law[i]! - 1))).toBeLessThan(1e-12);
      }),
    );
  });

  // ω2 = ω1 at tan θ1 = ±√cos β (θ1 from the other position), Engineering Services Examination 2013,
  // https://testbook.com/question-answer/the-driving-and-driven-shafts-connected-by-a-hooke--60751d8a41d8c4aa57c2ca1f
  it('is 1 where a printed examination answer has it', () => {
    const beta = 25 * DEGREE;
    const theta = Math.atan(Math.sqrt(Math.cos(beta))) - Math.PI / 2;
    expect(Math.abs(speedRatio(lineOf([{}, { plan: beta }]), [theta])[0]! - 1)).toBeLessThan(1e-15 * 4);
  });

  // 30°, 500 rpm: 433.0 and 577.4 rpm; inputs and method
  // https://www.civilengineeringhandbook.tk/vehicle-technology/623-constant-velocity-joints.html
  it('gives the printed worked example', () => {
    const [least, most] = speedRatio(lineOf([{}, { elevation: -30 * DEGREE }]), [0, Math.PI / 2]);
    expect(Math.abs(500 * least! - 433.01)).toBeLessThan(0.005);
    expect(Math.abs(500 * most! - 577.35)).toBeLessThan(0.005);
  });
});

describe('speedRatio of a chain', () => {
  it.each(chains.map((chain, index) => [index, chain] as const))(
    'agrees with loop closure in 40 digits: chain %i',
    (_, chain) => {
      const ratios = speedRatio(lineOf(chain.shafts, chain.joints), chain.inputAngles);
      chain.ratio.forEach((expected, i) => {
        expect(Math.abs(ratios[i]! / expected - 1)).toBeLessThan(1e-11);
      });
    },
  );

  // Equal angles, inner yokes in the plane of their joints: uniform output.
  // https://yumpu.com/en/document/view/51168356/cardan-shafts-for-industrial-applications-dana/40 (after VDI 2722)
  it.each([
    ['Z', 0],
    ['W', 2],
  ])('cancels in a double joint of equal angles, layout %s', (_, times) => {
    for (const angle of [1e-6, 3, 10, 25, 45]) {
      const line = lineOf([{}, { elevation: angle * DEGREE }, { elevation: times * angle * DEGREE }]);
      expect(largest(speedRatio(line, turn).map((ratio) => ratio - 1))).toBeLessThan(1e-12);
    }
  });

  // The twist that cancels is the angle between the joint planes: http://www.elbe-group.de/technik/elbe_techan4_e.htm
  it('cancels in space with the yokes turned by the angle between the planes', () => {
    const line = lineOf([{ plan: -12 * DEGREE }, { yokeTwist: Math.PI / 2 }, { elevation: 12 * DEGREE }]);
    expect(largest(speedRatio(line, turn).map((ratio) => ratio - 1))).toBeLessThan(1e-12);
  });

  it('is 1 for any number of shafts in line, whatever their yokes', () => {
    const shafts = Array.from({ length: 9 }, (_, i) => ({ elevation: 0.2, plan: -0.4, yokeTwist: i / 3 }));
    expect(largest(speedRatio(lineOf(shafts), turn).map((ratio) => ratio - 1))).toBeLessThan(1e-15 * 4);
  });

  it('is 1 for one shaft, and for rigid and flexible joints alone', () => {
    expect([...speedRatio(lineOf([{}]), [0, 1])]).toEqual([1, 1]);
    const flexible = lineOf(
      [{}, { elevation: 0.3, yokeTwist: 1 }, { elevation: 0.301 }],
      ['flexible', 'rigid'],
    );
    expect([...speedRatio(flexible, [0, 1])]).toEqual([1, 1]);
  });

  it('does not notice where a shaft is cut and rigidly joined', () => {
    const whole = lineOf([{}, { elevation: 0.3, plan: 0.1, yokeTwist: 0.9 }, { elevation: 0.1, plan: 0.4 }]);
    const cut = lineOf(
      [
        {},
        { elevation: 0.3, plan: 0.1, yokeTwist: 0.7 },
        { elevation: 0.3, plan: 0.1, yokeTwist: 0.2 },
        { elevation: 0.1, plan: 0.4 },
      ],
      ['universal', 'rigid', 'universal'],
    );
    const [one, other] = [speedRatio(whole, turn), speedRatio(cut, turn)];
    expect(largest(one.map((ratio, i) => ratio - other[i]!))).toBeLessThan(1e-14);
  });

  it('starts with the pin to port where the first joint is straight', () => {
    // The second joint bends in plan: its normal is vertical, and the driven pin of the straight first joint at
    // input angle 0 is square to port, vertical too; so the second joint starts at its slowest.
    const line = lineOf([{}, {}, { plan: 0.5 }]);
    expect(Math.abs(speedRatio(line, [0])[0]! - Math.cos(0.5))).toBeLessThan(1e-15 * 4);
  });
});

const chain = fc.array(
  fc.record({
    elevation: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
    plan: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
    yokeTwist: fc.double({ min: -3, max: 3, noNaN: true }),
  }),
  { minLength: 2, maxLength: 9 },
);

describe('laws of speedRatio', () => {
  // A turn in is a turn out: the ratio's mean over the input angle is 1. The trapezoid rule is exact to rounding here.
  it('averages 1 over a turn', () => {
    fc.assert(
      fc.property(chain, (shafts) => {
        const many = Float64Array.from({ length: 4096 }, (_, i) => (Math.PI * i) / 4096);
        const ratios = speedRatio(lineOf(shafts), many);
        fc.pre(Math.max(...ratios) < 50);
        expect(Math.abs(ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length - 1)).toBeLessThan(
          1e-11,
        );
      }),
    );
  });

  it('repeats every half turn', () => {
    fc.assert(
      fc.property(chain, fc.double({ min: -50, max: 50, noNaN: true }), (shafts, angle) => {
        const [one, other] = speedRatio(lineOf(shafts), [angle, angle + Math.PI]);
        expect(Math.abs(one! / other! - 1)).toBeLessThan(1e-10);
      }),
    );
  });

  it('turns backward in time under mirroring: port and starboard, yokes the other way', () => {
    fc.assert(
      fc.property(chain, fc.double({ min: -3, max: 3, noNaN: true }), (shafts, angle) => {
        const mirrored = shafts.map(({ elevation, plan, yokeTwist }) => ({
          elevation,
          plan: -plan,
          yokeTwist: -yokeTwist,
        }));
        const one = speedRatio(lineOf(shafts), [angle])[0]!;
        const other = speedRatio(lineOf(mirrored), [-angle])[0]!;
        expect(Math.abs(one / other - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it('does not depend on where the whole line points in plan', () => {
    fc.assert(
      fc.property(chain, fc.double({ min: -3, max: 3, noNaN: true }), (shafts, heading) => {
        const turned = shafts.map((shaft) => ({ ...shaft, plan: shaft.plan + heading }));
        fc.pre(Math.abs(shafts[0]!.elevation - shafts[1]!.elevation) > 1e-6);
        const [one, other] = [speedRatio(lineOf(shafts), [0.7])[0]!, speedRatio(lineOf(turned), [0.7])[0]!];
        expect(Math.abs(one / other - 1)).toBeLessThan(1e-8);
      }),
    );
  });
});

describe('speedRatio refuses', () => {
  it('an angle that is not finite', () => {
    expect(() => speedRatio(lineOf([{}, { plan: 0.1 }]), [0, NaN])).toThrow(
      new RangeError('speedRatio: inputAngles[1] must be a finite angle in rad, got NaN'),
    );
  });

  it('a joint at 90° or more in a line that nobody checked', () => {
    const line = lineOf([{}, { plan: 1 }]);
    const bent = { ...line, shafts: [line.shafts[0]!, { ...line.shafts[1]!, plan: 2 }] };
    expect(() => speedRatio(bent, [0])).toThrow(
      new RangeError('equivalentJoint: angle of joints[0] must be below π/2 rad (90°), got 2'),
    );
  });
});
