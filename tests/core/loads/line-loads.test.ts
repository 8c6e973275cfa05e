import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bushLoad,
  exampleLine,
  jointCouples,
  lineLoads,
  propellerTorque,
  supportReactions,
  torsionalResponse,
  type ShaftLine,
} from '@sternline/core';
import { extremeLine } from '../../support/random-lines.js';

function withJoint(part: Partial<ShaftLine['joints'][number]>): ShaftLine {
  const line = exampleLine();
  return { ...line, joints: line.joints.map((joint) => ({ ...joint, ...part })) };
}

const at = { speed: 345, torque: 0.2 };

describe('lineLoads', () => {
  it('gathers what its parts give', () => {
    const line = exampleLine();
    const loads = lineLoads(line, at);
    const response = torsionalResponse(line, at);
    expect(loads.joints[0]!.couple).toEqual(jointCouples(line, at)[0]);
    expect(loads.joints[0]!.torqueSwing).toBe(response.jointSwing[0]);
    const { supports } = supportReactions(line, at);
    loads.supports.forEach(({ bush, ...reaction }, i) => {
      expect(reaction).toEqual(supports[i]);
      expect(bush.rubbingSpeed).toBe(bushLoad({ force: 0, diameter: 0.005, speed: 345 }).rubbingSpeed);
    });
    expect(loads.shafts.map(({ torqueSwing }) => torqueSwing)).toEqual([...response.shaftSwing]);
    expect(loads.spans).toHaveLength(3);
    expect(loads.seals.length).toBeGreaterThan(0);
  });

  it('takes the torque of the propeller where none is given', () => {
    const line = exampleLine();
    expect(lineLoads(line, { speed: 300 }).torque).toBe(propellerTorque(line, { speed: 300 }));
    const { propeller, ...bare } = line;
    expect(propeller).toBeDefined();
    expect(() => lineLoads(bare, { speed: 300 })).toThrow(
      'lineLoads: torque must be given where the line has no propeller, got undefined',
    );
  });

  it('sets joints against what their makers allow', () => {
    const [joint] = lineLoads(withJoint({ ratedTorque: 0.25, maxAngle: 0.2 }), at).joints;
    expect(joint!.rated!.value).toBe(joint!.peakTorque);
    expect(joint!.rated!.within).toBe(joint!.peakTorque <= 0.25);
    expect(joint!.rated!.factor).toBeCloseTo(0.25 / joint!.peakTorque, 12);
    expect(joint!.bend).toMatchObject({ limit: 0.2, within: false });
    const [free] = lineLoads(withJoint({}), at).joints;
    expect(free!.rated).toBeUndefined();
  });

  it('tells a screw that will walk loose, and a line that rattles', () => {
    const [joint] = lineLoads(withJoint({ fastener: { kind: 'set-screw', size: 0.002 } }), at).joints;
    expect(joint!.fastener!.holds).toBe(false);
    expect(joint!.fastener!.peakTorque).toBe(joint!.peakTorque);
    expect(joint!.rattles).toBe(false);
    expect(lineLoads(exampleLine(), { speed: 345, torque: 0.001 }).joints[0]!.rattles).toBe(true);
  });

  it('gives finite figures for every line that is legal', () => {
    fc.assert(
      fc.property(extremeLine, (line) => {
        const loads = lineLoads(line, { speed: 400, torque: 0.5 });
        for (const { largest } of loads.supports) expect(Number.isFinite(largest)).toBe(true);
        for (const { stress, safety } of loads.shafts) {
          expect(Number.isFinite(stress.vonMises)).toBe(true);
          expect(safety.fatigueFactor).toBeGreaterThan(0);
          expect(safety.yieldFactor).toBeLessThan(Infinity);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('turns down what is out of its domain', () => {
    expect(() => lineLoads(exampleLine(), { speed: NaN })).toThrow(
      'lineLoads: speed must be a finite number greater than 0, got NaN',
    );
    expect(() => lineLoads(exampleLine(), { speed: 1, torque: -1 })).toThrow(
      'lineLoads: torque must be a finite number of at least 0, got -1',
    );
  });
});
