import { checkWhole } from '../internal/checks.js';
import type { ShaftLine } from '../line/types.js';
import { closeChain } from './close-chain.js';
import { equivalentJoint } from './equivalent-joint.js';
import { foldHalfTurn } from './fold-half-turn.js';
import { pinTurns, type PinTurn } from './pin-turns.js';
import { speedFluctuation } from './speed-fluctuation.js';
import type { ShaftPhase, ToothPlace, YokePhase } from './types.js';

const DEGREE = Math.PI / 180;
/** rad; a yoke this near to its best place needs no turning. */
const SETTLED = 1e-9;

/**
 * How the yokes of the inner shafts must stand to one another for the line to turn most evenly.
 *
 * Two joints at equal angles cancel where the twist between the yokes of the shaft between them is the angle between
 * their bend planes, modulo half a turn; at a phase error ψ the output angle swings by 2 tan²(β/2) sin ψ. Any number
 * of joints cancels where no −ln cos βᵢ exceeds the sum of the others.
 *
 * @param line - a shaft line as `parseShaftLine` gives it
 * @param options - `teeth` of the spline on which the yokes of the inner shafts can be put, from 2 to 1000; absent
 *   where they turn freely
 * @returns degrees of fluctuation as the line is, with every inner shaft's yokes in line, and at best; and for each
 *   inner shaft its best twist, how to turn there, and what an error of a degree or a tooth costs
 * @throws RangeError where `teeth` is out of its range, or a universal joint stands at 90° or more
 * @remarks Exact. With three or more joints the best twists are not unique: those given are near the present ones.
 *   Twists and turns are about the shaft's direction in the frame of the model (x aft, y to port, z up), from port
 *   upwards: anticlockwise as seen looking aft from the motor.
 * @example
 * const degree = Math.PI / 180;
 * const shaft = { length: 0.1, outerDiameter: 0.005, material: 'stainless steel 304' };
 * const held = [{ at: 0.01 }, { at: 0.09 }];
 * const line = parseShaftLine({
 *   shafts: [
 *     { ...shaft, supports: held },
 *     { ...shaft, elevation: 10 * degree },
 *     { ...shaft, elevation: 10 * degree, plan: 10.156 * degree, supports: held },
 *   ],
 *   joints: [{ kind: 'universal' }, { kind: 'universal' }],
 * });
 * const phase = yokePhase(line, { teeth: 16 });
 * phase.shafts[0].turn / degree // → -89.1
 * phase.shafts[0].sense // → 'clockwise'
 * phase.degreeAtZero // → 0.0612
 * phase.shafts[0].spline.teeth // → -4
 * @see turning the inner yokes by the angle between the planes: http://www.elbe-group.de/technik/elbe_techan4_e.htm
 */
export function yokePhase(line: ShaftLine, { teeth }: { readonly teeth?: number } = {}): YokePhase {
  if (teeth !== undefined) checkWhole('yokePhase: teeth', teeth, [2, 1000]);
  const joints = pinTurns(line, 'yokePhase');
  const changes = closeChain(joints, 'yokePhase: angle of each joint');
  const inner = joints.slice(1).map((joint, i) => innerShaft(line, joints[i] ?? joint, joint));
  const best = withTwists(
    line,
    new Map(inner.map(({ shaft, twist }, i) => [shaft, twist + (changes[i + 1] ?? 0)])),
  );
  const equivalent = equivalentJoint(best);
  return {
    degree: speedFluctuation(line).degree,
    degreeAtZero: speedFluctuation(allInLine(line, joints)).degree,
    degreeAtBest: speedFluctuation(best).degree,
    equivalentAngleAtBest: equivalent.angle,
    shafts: inner.map((shaft, i) => shaftPhase({ ...shaft, best, teeth, change: changes[i + 1] ?? 0 })),
  };
}

interface InnerShaft {
  /** Index of the first piece. */
  readonly shaft: number;
  /** rad, its own yoke twist. */
  readonly twist: number;
  readonly planeAngle: number;
}

function innerShaft(line: ShaftLine, from: PinTurn, to: PinTurn): InnerShaft {
  const pieces = line.shafts.slice(from.joint + 1, to.joint + 1);
  const twists = pieces.reduce((sum, { yokeTwist }) => sum + yokeTwist, 0);
  const planeAngle = twists + Math.PI / 2 - to.turn;
  return {
    shaft: from.joint + 1,
    twist: pieces[0]?.yokeTwist ?? 0,
    planeAngle: planeAngle - 2 * Math.PI * Math.ceil(planeAngle / (2 * Math.PI) - 0.5),
  };
}

function withTwists(line: ShaftLine, twists: ReadonlyMap<number, number>): ShaftLine {
  return {
    ...line,
    shafts: line.shafts.map((shaft, i) => ({ ...shaft, yokeTwist: twists.get(i) ?? shaft.yokeTwist })),
  };
}

function allInLine(line: ShaftLine, joints: readonly PinTurn[]): ShaftLine {
  const first = joints[0]?.joint ?? 0;
  const last = joints.at(-1)?.joint ?? 0;
  const inner = line.shafts.slice(first + 1, last + 1);
  return withTwists(line, new Map(inner.map((_, i) => [first + 1 + i, 0])));
}

interface Choice extends InnerShaft {
  /** The line with every inner shaft at its best. */
  readonly best: ShaftLine;
  readonly change: number;
  readonly teeth: number | undefined;
}

function shaftPhase(choice: Choice): ShaftPhase {
  const { shaft, twist, planeAngle, change, teeth } = choice;
  const sense = change > 0 ? 'anticlockwise' : 'clockwise';
  return {
    shaft,
    planeAngle,
    best: foldHalfTurn(twist + change),
    turn: change,
    sense: Math.abs(change) < SETTLED ? 'none' : sense,
    degreeOneDegreeOff: worseOf(choice, [change - DEGREE, change + DEGREE]),
    ...(teeth === undefined ? {} : { spline: nearestTooth(choice, teeth) }),
  };
}

/** Fluctuation of the line with this shaft turned by one of these instead of by its best, whichever is worse. */
function worseOf({ best, shaft, twist }: Choice, turns: readonly number[]): number {
  return Math.max(
    ...turns.map((turn) => speedFluctuation(withTwists(best, new Map([[shaft, twist + turn]]))).degree),
  );
}

/** Half a turn of the yoke is no change: with an odd number of teeth it doubles the places to choose from. */
function nearestTooth(choice: Choice, count: number): ToothPlace {
  const pitch = (2 * Math.PI) / count;
  const places = [0, -Math.PI, Math.PI].map((half) => {
    const teeth = Math.round((choice.change + half) / pitch);
    return { teeth, off: Math.abs(teeth * pitch - choice.change - half) };
  });
  const least = Math.min(...places.map(({ off }) => off));
  const nearest = places.filter(({ off }) => off <= least + SETTLED).map(({ teeth }) => teeth);
  const teeth = nearest.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
  const turn = teeth * pitch;
  return {
    teeth: teeth === 0 ? 0 : teeth,
    yokeTwist: choice.twist + turn,
    degree: worseOf(choice, [turn]),
    degreeOneToothOff: worseOf(choice, [turn - pitch, turn + pitch]),
  };
}
