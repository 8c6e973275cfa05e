import { checkFinite, checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { freeShafts } from '../line/free-shafts.js';
import type { ShaftLine } from '../line/types.js';
import { USUAL_BALANCE_GRADE } from '../line/usual-balance-grade.js';
import { magnitude, plus, type Complex } from '../numerics/complex.js';
import { NotPositiveDefiniteError } from '../numerics/not-positive-definite-error.js';
import { buildStaticBeam, type StaticBeam } from './build-static-beam.js';
import { coupleLoads, type PlaneLoad } from './couple-loads.js';
import { loadBeam, type BeamAnswer } from './load-beam.js';
import { unbalanceLoads } from './unbalance-loads.js';
import { weightLoad } from './weight-load.js';
import type { LineReactions, ShaftBending, SupportReaction } from './types.js';

export interface ReactionOptions {
  /** rad/s */
  readonly speed: number;
  /** N·m, mean. */
  readonly torque: number;
  /** Balance grade of discs that give no unbalance of their own. Default 16. */
  readonly balanceGrade?: number;
}

/**
 * What each support has to hold, and how the shafts bend for it: weight, couples of the joints, unbalance and bow.
 *
 * The line as a beam at rest on its supports, hinged at the joints. A joint's couples make a part that stands still and one
 * that turns at 2Ω (see {@link jointCouples}); a disc pulls with U Ω², a bowed shaft with its mass times half its run-out.
 *
 * @param line - a checked line
 * @param options - `speed` in rad/s, mean `torque` in N·m, `balanceGrade` of discs without an unbalance, default 16
 * @returns for each support forces in N by what makes them, and for each shaft its bending in N·m where it is worst
 * @throws RangeError for an option out of its domain, or where a part of the line is free to move
 * @remarks At rest: what whirl adds near a critical speed is left out, and so are thrust, the side force of the propeller and
 *   buoyancy. Shear of stubby spans is left out. Joint angles turn the line's frame along with it, but a force handed over at a
 *   bent joint is taken as wholly sideways, which is good to 1 − cos β. Rigid supports make rigid answers: a stiff bush close
 *   to the joint takes most of a couple, and a soft one less.
 * @example
 * const { supports } = supportReactions(exampleLine(), { speed: 345, torque: 0.2 });
 * supports.length // → 4
 * supports[2].second > supports[3].second // → true
 * @see J. S. Przemieniecki, "Theory of Matrix Structural Analysis", 1968; the couples are derived
 */
export function supportReactions(line: ShaftLine, options: ReactionOptions): LineReactions {
  const { speed, torque, balanceGrade = USUAL_BALANCE_GRADE } = options;
  checkPositive('supportReactions: speed', speed);
  checkFinite('supportReactions: torque', torque);
  const beam = heldBeam(line);
  const weight = inPlanes(beam, weightLoad(line, beam));
  const couples = coupleLoads(line, beam, torque);
  const mean = inPlanes(beam, couples.mean);
  const forward = inPlanes(beam, couples.forward);
  const backward = inPlanes(beam, couples.backward);
  const turning = unbalanceLoads(line, beam, { speed, balanceGrade }).map((load) => loadBeam(beam, load));
  const still = (read: Reader, i: number): Complex => plus(read(weight, i), read(mean, i));
  const second = (read: Reader, i: number): number =>
    magnitude(read(forward, i)) + magnitude(read(backward, i));
  const first = (key: keyof BeamAnswer, i: number): number =>
    turning.reduce((sum, answer) => sum + Math.abs(answer[key][i] ?? 0), 0);
  const supports = beam.supports.map(({ shaft, support, node }, i): SupportReaction => {
    const parts = {
      steady: magnitude(still(reactionAt, i)),
      weight: magnitude(reactionAt(weight, i)),
      first: first('reactions', i),
      second: second(reactionAt, i),
    };
    const largest = parts.steady + parts.first + parts.second;
    return { shaft, support, at: beam.at[node] ?? 0, ...parts, largest };
  });
  const bending = line.shafts.map((_, shaft) =>
    worstBending(beam, shaft, (i) => ({
      alternating: magnitude(still(momentAt, i)) + second(momentAt, i),
      steady: first('moments', i),
    })),
  );
  return { supports, bending };
}

function heldBeam(line: ShaftLine): StaticBeam {
  try {
    return buildStaticBeam(line);
  } catch (error) {
    if (!(error instanceof NotPositiveDefiniteError)) throw error;
    const free = freeShafts(line)[0];
    const name = line.shafts[free?.first ?? 0]?.name ?? '';
    const condition = `held sideways throughout (shaft ${JSON.stringify(name)} is free to ${free?.motion ?? 'move'})`;
    throw refusal('supportReactions: line', condition, line);
  }
}

/** Answers in the two planes of the developed line. */
interface PlaneAnswer {
  readonly port: BeamAnswer;
  readonly up: BeamAnswer;
}

type Reader = (answer: PlaneAnswer, i: number) => Complex;

function inPlanes(beam: StaticBeam, { port, up }: PlaneLoad): PlaneAnswer {
  return { port: loadBeam(beam, port), up: loadBeam(beam, up) };
}

function reactionAt({ port, up }: PlaneAnswer, i: number): Complex {
  return [port.reactions[i] ?? 0, up.reactions[i] ?? 0];
}

function momentAt({ port, up }: PlaneAnswer, i: number): Complex {
  return [port.moments[i] ?? 0, up.moments[i] ?? 0];
}

function worstBending(beam: StaticBeam, shaft: number, at: (i: number) => ShaftBending): ShaftBending {
  let worst: ShaftBending = { alternating: 0, steady: 0 };
  beam.pieces.forEach(({ node }, piece) => {
    if (beam.shaft[node] !== shaft) return;
    for (const i of [2 * piece, 2 * piece + 1]) {
      const here = at(i);
      if (here.alternating + here.steady > worst.alternating + worst.steady) worst = here;
    }
  });
  return worst;
}
