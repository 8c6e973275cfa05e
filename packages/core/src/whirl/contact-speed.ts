import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import { bracketedRoot } from '../numerics/bracketed-root.js';
import { largestRadius, steadyWhirl, type SteadyOrder, type SteadyWhirl } from './steady-whirl.js';
import type { ContactSpeed, ContactSpeedOptions, TubeContact } from './types.js';
import { whirlSolver } from './whirl-solver.js';

/** Evenly spaced speeds at which the clearance is looked at. */
const LOOKS = 200;
/** Further looks about each critical speed, as multiples of the half width of its peak. */
const PEAK = [-8, -4, -2, -1, -0.5, -0.25, 0, 0.25, 0.5, 1, 2, 4, 8] as const;
/** Half width of a peak, as a share of its speed, at the default damping. */
const HALF_WIDTH = 0.02;
const MODES = 8;

/**
 * The lowest speed at which the whirl of a line is as wide as the radial clearance of its tube, and the bands where it is wider.
 *
 * The clearance is (bore − shaft diameter)/2, the whirl that of `whirlResponse`, all orders added as if they peaked together.
 *
 * @param line - a checked line; one shaft or more has a `tubeBore`
 * @param options - `to`, the highest speed to look at, in rad/s; `damping` and `excitations` as for `whirlResponse`
 * @returns the lowest speed in rad/s, Infinity where none is found up to `to`; the bands of each tube; and whether anything drives
 *   the line: if nothing does (no disc, no run-out), Infinity says nothing about the tube
 * @throws RangeError for an option out of its domain, or a line without a tube
 * @throws MechanismError if a part of the line is free to move
 * @remarks Looked at in 200 even steps and about each critical speed, so that a narrow peak is not stepped over. Counted between the
 *   outermost supports of a shaft; what sags or is mounted off centre in its tube touches earlier.
 *   Discs without an `unbalance` are as in `whirlResponse`.
 * @example
 * const line = exampleLine();
 * const shafts = line.shafts.map((shaft) => ({ ...shaft, tubeBore: 0.0052 }));
 * const contact = contactSpeed({ ...line, shafts }, { to: 1200 });
 * contact.speed // → 782 rad/s
 * contact.tubes[1].bands.length // → 1
 * contact.driven // → true
 * @see whirlResponse
 */
export function contactSpeed(
  line: ShaftLine,
  { to, damping, excitations }: ContactSpeedOptions,
): ContactSpeed {
  checkPositive('contactSpeed: to', to);
  if (line.shafts.every(({ tubeBore }) => tubeBore === undefined))
    throw refusal('contactSpeed: line', 'a line with a shaft that turns in a tube (tubeBore)', line);
  const steady = steadyWhirl(line, { damping, excitations, fastest: to }, 'contactSpeed');
  const looks = looksUpTo(line, to, steady.at(0)).map((speed) => ({ speed, orders: steady.at(speed) }));
  const tubes = steady.tubes.map((_, tube) => contactOf(steady, tube, looks));
  const speed = Math.min(...tubes.flatMap(({ bands }) => bands.map(({ from }) => from)));
  return { speed, driven: steady.driven, tubes };
}

/** Speeds to look at, ascending from 0. */
function looksUpTo(line: ShaftLine, to: number, driven: readonly SteadyOrder[]): number[] {
  const even = Array.from({ length: LOOKS + 1 }, (_, i) => (to * i) / LOOKS);
  const { solve } = whirlSolver(line, 'contactSpeed');
  const peaks = driven.flatMap(({ order, whirl }) =>
    Array.from(
      solve({ order, whirl, count: MODES }).pairs.values,
      (value) => Math.sqrt(value) / order,
    ).flatMap((critical) => PEAK.map((width) => critical * (1 + width * HALF_WIDTH))),
  );
  return [...even, ...peaks.filter((speed) => speed < to)].sort((a, b) => a - b);
}

interface Look {
  readonly speed: number;
  readonly orders: readonly SteadyOrder[];
}

function contactOf(steady: SteadyWhirl, tube: number, looks: readonly Look[]): TubeContact {
  const { shaft, clearance, points } = steady.tubes[tube] ?? { shaft: 0, clearance: 0, points: [] };
  const excess = (orders: readonly SteadyOrder[]): number => largestRadius(orders, points) - clearance;
  const bands: { from: number; to: number }[] = [];
  looks.forEach(({ speed, orders }, i) => {
    const before = looks[i - 1];
    const wider = excess(orders) > 0;
    const wasWider = before ? excess(before.orders) > 0 : false;
    const edge = (): number =>
      before ? bracketedRoot((x) => excess(steady.at(x)), [before.speed, speed]) : speed;
    if (wider && !wasWider) bands.push({ from: edge(), to: speed });
    const last = bands.at(-1);
    if (last && wasWider) last.to = wider ? speed : edge();
  });
  return { shaft, clearance, bands };
}
