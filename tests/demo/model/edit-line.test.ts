import { exampleLine, jointAngles, parseShaftLine, speedFluctuation } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import {
  addDisc,
  addSupport,
  layoutOf,
  removeFrom,
  resizeShaft,
  rethickenShaft,
  toOneJoint,
  toTwoJoints,
} from '../../../packages/demo/src/model/edit-line.js';

const line = exampleLine();
const places = (items: readonly { readonly at: number }[] | undefined) => items?.map(({ at }) => at);

describe('edits of a line', () => {
  it('keep what sits aft at its distance from the aft end', () => {
    const shorter = resizeShaft(line, { shaft: 1, length: 0.336 });
    // 40 mm off a shaft with bushes at 26 and 334 mm and its propeller at 364 mm.
    expect(places(shorter.shafts[1]?.supports)).toEqual([0.026, expect.closeTo(0.294, 12)]);
    expect(places(shorter.shafts[1]?.discs)).toEqual([expect.closeTo(0.324, 12)]);
    expect(() => parseShaftLine(shorter)).not.toThrow();
  });

  it('leave the fittings alone while a length is no number', () => {
    const broken = resizeShaft(line, { shaft: 1, length: NaN });
    expect(places(broken.shafts[1]?.supports)).toEqual([0.026, 0.334]);
  });

  it('keep the clearance of the bushes, and widen a tube only if the shaft no longer passes', () => {
    const six = rethickenShaft(line, { shaft: 1, outerDiameter: 0.006 });
    expect(six.shafts[1]?.supports.map(({ bore }) => bore)).toEqual([
      expect.closeTo(0.00603, 12),
      expect.closeTo(0.00603, 12),
    ]);
    expect(six.shafts[1]?.tubeBore).toBe(0.007);
    const eight = rethickenShaft(line, { shaft: 1, outerDiameter: 0.008 });
    expect(eight.shafts[1]?.tubeBore).toBeCloseTo(0.01, 12);
    expect(() => parseShaftLine(eight)).not.toThrow();
  });

  it('put a new bush in the middle of the widest stretch, and take it away again', () => {
    const three = addSupport(line, 1);
    expect(places(three.shafts[1]?.supports)).toEqual([0.026, expect.closeTo(0.18, 12), 0.334]);
    expect(removeFrom(three, { kind: 'supports', shaft: 1, index: 1 })).toEqual(line);
  });

  it('put a disc in, and the line can still be', () => {
    expect(parseShaftLine(addDisc(line, 1)).shafts[1]?.discs).toHaveLength(2);
  });
});

describe('layouts', () => {
  it('share the bend of one joint evenly between two, which then cancel', () => {
    const two = parseShaftLine(toTwoJoints(line));
    const [whole] = jointAngles(line);
    expect(jointAngles(two)).toEqual([
      expect.closeTo((whole ?? 0) / 2, 12),
      expect.closeTo((whole ?? 0) / 2, 12),
    ]);
    // Two joints at equal angles in one plane with the yokes in line turn evenly: the law of the double joint.
    expect(speedFluctuation(two).degree).toBeLessThan(1e-9);
    expect(layoutOf(two)).toBe('two joints');
  });

  it('come back to the one joint', () => {
    expect(parseShaftLine(toOneJoint(toTwoJoints(line)))).toEqual(line);
    expect(layoutOf(line)).toBe('one joint');
  });

  it('leave a line alone that they do not fit', () => {
    const straight = { ...line, shafts: line.shafts.slice(1), joints: [] };
    expect(toTwoJoints(straight)).toBe(straight);
    expect(layoutOf(straight)).toBe('other');
  });
});
