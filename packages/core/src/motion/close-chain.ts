import { bendMap, rotateMap, stillMap, type DiscMap } from './disc-map.js';
import { foldHalfTurn } from './fold-half-turn.js';
import type { PinTurn } from './pin-turns.js';

/**
 * The turns between the joints of a chain that let it turn most evenly, nearest to the turns that it has.
 *
 * In the hyperbolic plane of the disc a joint at β is a step of length −ln cos β, and a turn between joints is the
 * corner between two steps. So two joints cancel where their steps are equal and opposite, and more of them where the
 * steps can be closed to a polygon: where no step exceeds the sum of the others; else the excess is left. Each step is
 * laid so that it leads as near home as the rest can still close; the corner follows from
 *
 *   sinh²(r′/2) = sinh²((r − d)/2) + sinh r sinh d cos²θ
 *
 * with r the distance so far, d the step, r′ the distance after it and θ the turn, counted from straight on.
 *
 * @param joints - the universal joints of the line with their present turns
 * @param where - `'function: argument'`, for the refusal of 90° or more
 * @returns for each joint the change of turn in rad, over −π/2 to π/2; 0 for the first
 * @see derived here; hyperbolic law of cosines
 */
export function closeChain(joints: readonly PinTurn[], where: string): number[] {
  const steps = joints.map(({ angle }) => step(angle));
  const map = stillMap();
  return joints.map(({ angle, turn }, index) => {
    const reached = distance(map);
    const change = index === 0 ? 0 : corner(map, { turn, reached, steps: steps.slice(index) });
    rotateMap(map, turn + change);
    bendMap(map, angle, where);
    return change;
  });
}

/** −ln cos β without loss at small β. */
function step(angle: number): number {
  const sine = Math.sin(angle) ** 2;
  return sine < 0.5 ? -0.5 * Math.log1p(-sine) : -Math.log(Math.cos(angle));
}

/** r from sinh(r/2) = |B| / √(|A|² − |B|²): exact from next to nothing to joints close to 90°. */
function distance({ bRe, bIm, determinant }: DiscMap): number {
  return 2 * Math.asinh(Math.hypot(bRe, bIm) / Math.sqrt(determinant));
}

interface Corner {
  readonly turn: number;
  readonly reached: number;
  /** The step to lay, and those after it. */
  readonly steps: readonly number[];
}

function corner(map: DiscMap, { turn, reached, steps: [next = 0, ...rest] }: Corner): number {
  if (reached < ROUNDING || next < ROUNDING) return 0;
  const most = Math.max(0, ...rest);
  const needed = Math.max(0, 2 * most - rest.reduce((sum, length) => sum + length, 0));
  const wanted = Math.max(Math.abs(reached - next), Math.min(reached + next, needed));
  const cosine =
    (Math.sinh((wanted + reached - next) / 2) * Math.sinh((wanted - reached + next) / 2)) /
    (Math.sinh(reached) * Math.sinh(next));
  const theta = Math.acos(Math.sqrt(Math.min(1, Math.max(0, cosine))));
  const straight = -(Math.atan2(map.aIm, map.aRe) + Math.atan2(map.bIm, map.bRe)) / 2 - turn;
  const [one, other] = [foldHalfTurn(straight + theta), foldHalfTurn(straight - theta)];
  return Math.abs(one) <= Math.abs(other) ? one : other;
}

/** A step shorter than this is rounding, and has no direction. */
const ROUNDING = 1e-14;
