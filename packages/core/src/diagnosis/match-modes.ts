import type { LeastSquaresFit } from '../numerics/fit-least-squares.js';
import type { MeasuredResonance } from './calibration-types.js';
import { keyOf } from './resonance-model.js';

/** Modes looked at, and how far (natural log) one may lie from the resonance: pinned to fixed ends is ln 2.27. */
const FURTHEST = Math.log(3);
const MOST_MATCHES = 12;
/** χ² of passing over a mode below one that was measured: of twenty such modes one goes unnoticed. Our choice. */
const PASSED_OVER = -2 * Math.log(0.05);

export interface ModeMatch {
  /** From 0, by resonance. */
  readonly modes: readonly number[];
  /** χ² of the modes that went unnoticed if this is right. */
  readonly penalty: number;
}

/** A way to name the modes, with the stiffnesses that fit it best. */
export interface Candidate extends ModeMatch {
  readonly fit: LeastSquaresFit;
}

/**
 * The ways to give each resonance a mode, likeliest first: the mode it is said to be, or any within a factor of three;
 * resonances of one kind in the order of their modes.
 *
 * @param modelled - modes of the line as assumed, for each resonance, ascending
 */
export function matchModes(
  resonances: readonly MeasuredResonance[],
  modelled: readonly (readonly number[])[],
): ModeMatch[] {
  let ways: { readonly modes: readonly number[]; readonly miss: number }[] = [{ modes: [], miss: 0 }];
  resonances.forEach((resonance, i) => {
    const measured = resonance.frequency ?? resonance.speed;
    const given = resonance.mode === undefined ? undefined : resonance.mode - 1;
    const choices = (modelled[i] ?? []).flatMap((value, mode) => {
      const miss = Math.abs(Math.log(measured / value));
      const fits = given === undefined ? miss < FURTHEST : mode === given;
      return fits ? [{ mode, miss: miss ** 2 }] : [];
    });
    ways = ways
      .flatMap(({ modes, miss }) =>
        choices
          .filter(({ mode }) => inOrder(resonances, [...modes, mode]))
          .map((choice) => ({ modes: [...modes, choice.mode], miss: miss + choice.miss })),
      )
      .sort((a, b) => a.miss - b.miss)
      .slice(0, MOST_MATCHES);
  });
  return ways.map(({ modes }) => ({ modes, penalty: PASSED_OVER * unnoticed(resonances, modes) }));
}

/** Modes of each kind of resonance below the highest that was measured, and not measured themselves. */
function unnoticed(resonances: readonly MeasuredResonance[], modes: readonly number[]): number {
  const seen = new Map<string, Set<number>>();
  resonances.forEach((resonance, i) => {
    const key = keyOf(resonance);
    seen.set(key, (seen.get(key) ?? new Set()).add(modes[i] ?? 0));
  });
  return [...seen.values()].reduce((sum, own) => sum + Math.max(...own) + 1 - own.size, 0);
}

function inOrder(resonances: readonly MeasuredResonance[], modes: readonly number[]): boolean {
  const last = modes.length - 1;
  const newest = resonances[last];
  if (newest === undefined) return false;
  return modes.slice(0, last).every((mode, i) => {
    const other = resonances[i];
    if (other === undefined || keyOf(other) !== keyOf(newest)) return true;
    const apart = (newest.frequency ?? newest.speed) - (other.frequency ?? other.speed);
    // The same resonance measured twice may be one mode.
    if (newest.mode !== undefined && newest.mode === other.mode) return true;
    return apart > 0 ? (modes[last] ?? 0) > mode : (modes[last] ?? 0) < mode;
  });
}
