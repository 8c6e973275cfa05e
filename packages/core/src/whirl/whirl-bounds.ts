import { checkPositive } from '../internal/checks.js';
import type { Shaft, ShaftLine, Support } from '../line/types.js';
import { NoConvergenceError } from '../numerics/no-convergence-error.js';
import { bushSlope } from './bush-slope.js';
import { checkExcitation } from './check-excitation.js';
import { solvedSpeeds } from './solved-speeds.js';
import type { BushHold, CriticalSpeed, ModeShape, WhirlBound, WhirlBoundsOptions } from './types.js';
import { whirlSolver, type WhirlPencil } from './whirl-solver.js';

/** Share of the thinnest shaft's diameter, where no tube says how far the line may swing. Our choice, no source. */
const SWING = 0.1;
const MOST_ROUNDS = 400;
/** Share of a bush's stiffness to which bushes and mode must agree. */
const AGREED = 1e-6;
/** What a step gains while the change keeps its sign. */
const LONGER = 1.2;

/**
 * Critical speeds between bushes that let the shaft lean as it likes and bushes that hold its slope, with an estimate from
 * their length and clearance: how firmly a bush holds is the largest unknown of a small shaft line.
 *
 * `lower` has every support pinned, `upper` has the slope fixed at each. For `estimate` a bush resists the slope with the
 * stiffness K of {@link bushSlope} beyond its free slope: in a circular whirl of slope θ that is the stiffness
 * K (1 − c/ℓθ) about the centre line, exactly. θ is that of the mode at the `amplitude`, found together with it.
 *
 * @param line - a checked line
 * @param options - as for `criticalSpeeds`; `amplitude` in m, the largest displacement of the whirl: by default the least
 *   radial clearance in a tube, or a tenth of the thinnest shaft
 * @returns for each mode the speeds in rad/s, the shape of the estimate, and what each support does to it
 * @throws RangeError for an option out of its domain
 * @throws MechanismError if the line with pinned supports is free to move
 * @throws NoConvergenceError if bushes and mode do not come to agree
 * @remarks A support that already `fixesSlope` does so in all three; an entered `angularStiffness` stands in the estimate for
 *   what the length would give, and so does its absence for a support without a length. A whirl small enough to lean
 *   within the clearance is pinned: the estimate rises with the amplitude.
 * @example
 * const [first] = whirlBounds(exampleLine(), { count: 1 });
 * first.lower // → 800 rad/s
 * first.estimate // → 1248 rad/s
 * first.upper // → 1482 rad/s
 * @see for pinned and fixed ends, factor 2.27: W. T. Thomson, "Theory of Vibration with Applications", Table 9.5-1; the
 *   stiffness of a gap in circular whirl is derived
 */
export function whirlBounds(line: ShaftLine, options: WhirlBoundsOptions = {}): WhirlBound[] {
  const pencil = checkExcitation('whirlBounds: ', options);
  const { amplitude = usualSwing(line) } = options;
  checkPositive('whirlBounds: amplitude', amplitude);
  const lower = speedsOf(
    withHolds(line, () => ({ fixes: false, stiffness: 0 })),
    pencil,
  );
  const upper = speedsOf(
    withHolds(line, () => ({ fixes: true, stiffness: 0 })),
    pencil,
  );
  return lower.slice(0, upper.length).map(({ speed }, mode) => ({
    lower: speed,
    upper: upper[mode]?.speed ?? speed,
    ...estimate(line, { pencil, mode, amplitude }),
  }));
}

function speedsOf(line: ShaftLine, pencil: WhirlPencil): CriticalSpeed[] {
  return solvedSpeeds(whirlSolver(line, 'whirlBounds').solve(pencil), pencil);
}

function usualSwing(line: ShaftLine): number {
  const clearances = line.shafts.flatMap(({ tubeBore, outerDiameter }) =>
    tubeBore === undefined ? [] : [(tubeBore - outerDiameter) / 2],
  );
  if (clearances.length > 0) return Math.min(...clearances);
  return SWING * Math.min(...line.shafts.map(({ outerDiameter }) => outerDiameter));
}

interface Hold {
  readonly fixes: boolean;
  /** N·m/rad */
  readonly stiffness: number;
}

/** The line with each support that does not fix the slope holding it so. */
function withHolds(line: ShaftLine, holdOf: (place: Place) => Hold): ShaftLine {
  const shafts = line.shafts.map((own, shaft) => ({
    ...own,
    supports: own.supports.map((support, index) => {
      if (support.fixesSlope === true) return support;
      const { fixes, stiffness } = holdOf({ shaft, index, own, support });
      const { angularStiffness, ...bare } = { ...support, angularStiffness: stiffness };
      return { ...bare, fixesSlope: fixes, ...(angularStiffness > 0 ? { angularStiffness } : {}) };
    }),
  }));
  return { ...line, shafts };
}

interface Place {
  readonly shaft: number;
  readonly index: number;
  readonly own: Shaft;
  readonly support: Support;
}

interface Estimate {
  readonly pencil: WhirlPencil;
  readonly mode: number;
  readonly amplitude: number;
}

/**
 * Bushes and mode in turn, each from the other. The firmer a bush the less the shaft leans in it, so that the true stiffness
 * lies between any guess and what its mode asks for: where that turns from more to less, the step is halved.
 */
function estimate(
  line: ShaftLine,
  { pencil, mode, amplitude }: Estimate,
): Pick<WhirlBound, 'estimate' | 'shape' | 'supports'> {
  let guesses: readonly Guess[] = line.shafts.flatMap((own, shaft) =>
    own.supports.map((support, index) => {
      const stiffness = support.angularStiffness ?? 0;
      return { shaft, index, own, support, stiffness, change: 0, step: 1 };
    }),
  );
  for (let round = 1; ; round++) {
    const held = withHolds(line, ({ shaft, index }) => {
      const stiffness = guesses.find((one) => one.shaft === shaft && one.index === index)?.stiffness ?? 0;
      return { fixes: false, stiffness };
    });
    const found = speedsOf(held, { ...pencil, count: mode + 1 })[mode];
    if (!found) throw new NoConvergenceError(`whirlBounds: mode ${mode + 1} is lost between its bounds`);
    const next = guesses.map((one) => improved(one, { shape: found.shape, amplitude }));
    if (next.every(agrees)) return { estimate: found.speed, shape: found.shape, supports: holdsOf(guesses) };
    if (round === MOST_ROUNDS) {
      throw new NoConvergenceError(`whirlBounds: bushes and mode ${mode + 1} differ after ${round} rounds`);
    }
    guesses = next;
  }
}

interface Guess extends Place {
  /** N·m/rad */
  readonly stiffness: number;
  /** N·m/rad, what the mode asked for beyond the guess before this one. */
  readonly change: number;
  /** Share of the change that was made. */
  readonly step: number;
}

function improved(
  guess: Guess,
  { shape, amplitude }: { readonly shape: ModeShape; readonly amplitude: number },
): Guess {
  const slope = amplitude * Math.abs(slopeAt(shape, { shaft: guess.shaft, at: guess.support.at }));
  const change = holdAt(guess.own, guess.support, slope) - guess.stiffness;
  const turned = change * guess.change < 0;
  const step = turned ? guess.step / 2 : Math.min(1, LONGER * guess.step);
  return { ...guess, stiffness: guess.stiffness + step * change, change, step };
}

function agrees({ own, support, change }: Guess): boolean {
  return Math.abs(change) <= AGREED * (bushSlope(own, support)?.stiffness ?? Infinity);
}

function holdAt(own: Shaft, support: Support, slope: number): number {
  if (support.angularStiffness !== undefined) return support.angularStiffness;
  const bush = bushSlope(own, support);
  if (!bush || slope <= bush.freeSlope) return 0;
  return bush.stiffness * (1 - bush.freeSlope / slope);
}

/** 1/m at the node nearest to a place of a shaft. */
function slopeAt(shape: ModeShape, { shaft, at }: { readonly shaft: number; readonly at: number }): number {
  let nearest = -1;
  shape.shaft.forEach((own, node) => {
    const distance = Math.abs((shape.at[node] ?? 0) - at);
    if (own === shaft && (nearest < 0 || distance < Math.abs((shape.at[nearest] ?? 0) - at))) nearest = node;
  });
  return shape.slope[nearest] ?? 0;
}

function holdsOf(guesses: readonly Guess[]): BushHold[] {
  return guesses.map(({ shaft, index, stiffness }) => ({
    shaft,
    support: index,
    angularStiffness: stiffness,
  }));
}
