import type { Shaft } from './types.js';

type Direction = Pick<Shaft, 'elevation' | 'plan'>;

/** How one axis turns into the next: by what angle, and about which normal. */
export interface Bend {
  /** rad, between the two axes, 0 to π. */
  readonly angle: number;
  /** rad, about the first axis: from its port horizontal to the normal u × v of the joint plane. */
  readonly normalBefore: number;
  /** rad, about the second axis: from its port horizontal to the same normal. */
  readonly normalAfter: number;
}

/**
 * The bend between two axes u and v.
 *
 * Each shaft carries a frame that its two angles alone fix: the horizontal to port (−sin ψ, cos ψ, 0) and the
 * direction square to it. The sideways parts of v in the frame of u are
 *
 *   to port  cos ε₂ sin Δψ
 *   upward   sin Δε + 2 cos ε₂ sin ε₁ sin²(Δψ/2)
 *
 * and their length is |u × v|, so that atan2(|u × v|, u · v) is exact down to the smallest angle: differences of
 * angles are taken before any cosine is near 1.
 *
 * @see derived here from the spherical law of cosines
 */
export function jointBend(from: Direction, to: Direction): Bend {
  const lean = Math.cos(from.elevation) * Math.cos(to.elevation) * turnShare(from, to);
  const [port, up] = sideways(from, to);
  const [backPort, backUp] = sideways(to, from);
  return {
    angle: Math.atan2(Math.hypot(port, up), Math.cos(to.elevation - from.elevation) - lean),
    normalBefore: Math.atan2(port, -up),
    normalAfter: Math.atan2(-backPort, backUp),
  };
}

/** Parts of the second direction to port and upward in the frame of the first. */
function sideways(from: Direction, to: Direction): [port: number, up: number] {
  return [
    Math.cos(to.elevation) * Math.sin(to.plan - from.plan),
    Math.sin(to.elevation - from.elevation) +
      Math.cos(to.elevation) * Math.sin(from.elevation) * turnShare(from, to),
  ];
}

/** 1 − cos Δψ without loss at small Δψ. */
function turnShare(from: Direction, to: Direction): number {
  return 2 * Math.sin((to.plan - from.plan) / 2) ** 2;
}
