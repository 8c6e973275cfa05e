import { shaftDirection } from '@sternline/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jointBend } from '../../../packages/core/src/line/joint-bend.js';

type V = readonly [number, number, number];
const cross = (a: V, b: V): V => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Angle about an axis from its port horizontal to a vector square to it, from the components in space. */
function aboutAxis(plan: number, axis: V, vector: V): number {
  const port: V = [-Math.sin(plan), Math.cos(plan), 0];
  return Math.atan2(dot(cross(port, vector), axis), dot(port, vector));
}

describe('jointBend', () => {
  it('gives the normal u × v of the joint plane as each shaft sees it', () => {
    const angle = fc.double({ min: -1.4, max: 1.4, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(angle, angle, angle, angle), ([elevation, plan, elevation2, plan2]) => {
        const [from, to] = [{ elevation, plan }, { elevation: elevation2, plan: plan2 }]; // prettier-ignore
        const [u, v] = [shaftDirection(from), shaftDirection(to)];
        const normal = cross(u, v);
        fc.pre(dot(normal, normal) > 1e-6);
        const bend = jointBend(from, to);
        const before = bend.normalBefore - aboutAxis(plan, u, normal);
        const after = bend.normalAfter - aboutAxis(plan2, v, normal);
        expect(Math.abs(Math.sin(before / 2))).toBeLessThan(1e-11);
        expect(Math.abs(Math.sin(after / 2))).toBeLessThan(1e-11);
      }),
    );
  });

  it('carries a direction across vertical shafts unturned, though their horizontals differ', () => {
    // Both point straight up; the port horizontal of the second has turned by its plan angle, so what stands still
    // is seen to have turned back by as much.
    const bend = jointBend({ elevation: Math.PI / 2, plan: 0 }, { elevation: Math.PI / 2, plan: 0.7 });
    expect(Math.abs(bend.normalAfter - bend.normalBefore + 0.7)).toBeLessThan(1e-12);
  });
});
