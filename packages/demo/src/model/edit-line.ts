import type { Disc, Joint, Shaft, ShaftLine, Support } from '@sternline/core';
import { setIn } from './set-in.js';

/*
 * Edits of a shaft line that keep its parts together. None of them checks the result: the page parses every line
 * anew and keeps showing the last one that can be.
 */

/** What the builder calls a layout. */
export type Layout = 'one joint' | 'two joints' | 'other';

/** The layout of a line, by its universal joints. */
export function layoutOf(line: ShaftLine): Layout {
  const universal = line.joints.every((joint) => joint.kind === 'universal');
  if (universal && line.joints.length === 1) return 'one joint';
  return universal && line.joints.length === 2 ? 'two joints' : 'other';
}

/**
 * The line with a new length of one shaft; what sits in its aft half keeps its distance from the aft end.
 *
 * @param line - the line
 * @param change - which shaft, and its new length in m
 */
export function resizeShaft(
  line: ShaftLine,
  { shaft, length }: { shaft: number; length: number },
): ShaftLine {
  const old = line.shafts[shaft];
  if (!old) return line;
  const grown = length - old.length;
  const shift = <Item extends { readonly at: number }>(item: Item): Item =>
    Number.isFinite(grown) && item.at > old.length / 2 ? { ...item, at: item.at + grown } : item;
  return withShaft(line, shaft, {
    ...old,
    length,
    supports: old.supports.map(shift),
    discs: old.discs.map(shift),
  });
}

/**
 * The line with another diameter of one shaft; its bushes are bored anew with the clearance they had, and so is a tube
 * that it would no longer pass through.
 *
 * @param line - the line
 * @param change - which shaft, and its new outer diameter in m
 */
export function rethickenShaft(
  line: ShaftLine,
  { shaft, outerDiameter }: { shaft: number; outerDiameter: number },
): ShaftLine {
  const old = line.shafts[shaft];
  if (!old) return line;
  const grown = outerDiameter - old.outerDiameter;
  if (!Number.isFinite(grown)) return withShaft(line, shaft, { ...old, outerDiameter });
  const supports = old.supports.map((support) =>
    support.bore === undefined ? support : { ...support, bore: support.bore + grown },
  );
  const tight = old.tubeBore !== undefined && old.tubeBore <= outerDiameter;
  const tube = tight ? { tubeBore: old.tubeBore + grown } : {};
  return withShaft(line, shaft, { ...old, ...tube, outerDiameter, supports });
}

/** The line with one more bush, in the middle of the widest stretch between bushes of that shaft. */
export function addSupport(line: ShaftLine, shaft: number): ShaftLine {
  const old = line.shafts[shaft];
  if (!old) return line;
  const like = old.supports[0];
  const at = middleOfWidest(
    old.supports.map((support) => support.at),
    old.length,
  );
  const support: Support = { ...like, at };
  return withShaft(line, shaft, { ...old, supports: [...old.supports, support].sort(byPlace) });
}

/** The line with a disc more on one shaft, small enough to change little until it is weighed. */
export function addDisc(line: ShaftLine, shaft: number): ShaftLine {
  const old = line.shafts[shaft];
  if (!old) return line;
  const disc: Disc = {
    name: 'collar',
    at: old.length / 2,
    mass: 0.005,
    polarInertia: 2e-7,
    diametralInertia: 1e-7,
  };
  return withShaft(line, shaft, { ...old, discs: [...old.discs, disc].sort(byPlace) });
}

/** The line without one of its bushes or discs. */
export function removeFrom(
  line: ShaftLine,
  { kind, shaft, index }: { kind: 'supports' | 'discs'; shaft: number; index: number },
): ShaftLine {
  const old = line.shafts[shaft];
  if (!old) return line;
  return setIn(
    line,
    `shafts[${shaft}].${kind}`,
    old[kind].filter((_, place) => place !== index),
  );
}

/** m, between the joint centres of the short shaft that a second joint brings. */
const BETWEEN = 0.045;

/**
 * The line with its bend shared by two joints and a short shaft between them.
 *
 * @param line - a line of one joint
 */
export function toTwoJoints(line: ShaftLine): ShaftLine {
  const [motor, propeller] = line.shafts;
  const [joint] = line.joints;
  if (!motor || !propeller || !joint || line.joints.length !== 1) return line;
  const between: Shaft = {
    name: 'intermediate shaft',
    length: BETWEEN,
    outerDiameter: propeller.outerDiameter,
    innerDiameter: 0,
    material: propeller.material,
    elevation: (motor.elevation + propeller.elevation) / 2,
    plan: (motor.plan + propeller.plan) / 2,
    yokeTwist: 0,
    supports: [],
    discs: [],
  };
  const universal: Joint = { ...joint, kind: 'universal' };
  return { ...line, shafts: [motor, between, propeller], joints: [universal, universal] };
}

/** The line with only its first joint, all of the bend in it. */
export function toOneJoint(line: ShaftLine): ShaftLine {
  const [first] = line.shafts;
  const last = line.shafts.at(-1);
  const [joint] = line.joints;
  if (!first || !last || !joint || line.shafts.length < 3) return line;
  return { ...line, shafts: [first, last], joints: [{ ...joint, kind: 'universal' }] };
}

function withShaft(line: ShaftLine, index: number, shaft: Shaft): ShaftLine {
  return { ...line, shafts: line.shafts.map((old, place) => (place === index ? shaft : old)) };
}

function byPlace(a: { readonly at: number }, b: { readonly at: number }): number {
  return a.at - b.at;
}

function middleOfWidest(places: readonly number[], length: number): number {
  const stops = places.length > 1 ? [...places].sort((a, b) => a - b) : [0, ...places, length];
  let best = { from: 0, to: 0 };
  stops.slice(1).forEach((to, index) => {
    const from = stops[index] ?? 0;
    if (to - from > best.to - best.from) best = { from, to };
  });
  return (best.from + best.to) / 2;
}
