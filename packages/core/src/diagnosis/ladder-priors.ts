import type { ShaftLine } from '../line/types.js';
import type { CauseChance } from './ladder-types.js';
import type { Cause, Finding } from './types.js';

/** How often each cause is met in small lines, before anything is known; our judgement from builders' accounts. */
const COMMON: Readonly<Record<Cause, number>> = {
  unbalance: 0.2,
  'bent-shaft': 0.12,
  'joint-angle': 0.14,
  'joint-phase': 0.04,
  misalignment: 0.12,
  looseness: 0.12,
  rubbing: 0.07,
  'blade-pass': 0.06,
  whirl: 0.05,
  'torsional-resonance': 0.01,
  'structural-resonance': 0.04,
  electrical: 0.01,
  unexplained: 0.02,
};

/** Share that findings leave to causes which they do not name. */
const UNNAMED = 0.08;

/** One chance for each cause that the line can have. */
export function ladderPriors(findings: readonly Finding[], line: ShaftLine | undefined): CauseChance[] {
  const possible = (Object.keys(COMMON) as Cause[]).filter((cause) => canBe(cause, line));
  const named = new Map(findings.map(({ cause, confidence }) => [cause, oddsOf(confidence)]));
  const total = [...named.values()].reduce((sum, odds) => sum + odds, 0);
  const share = total > 0 ? UNNAMED : 1;
  return normalised(
    possible.map((cause) => ({
      cause,
      chance: (total > 0 ? ((1 - UNNAMED) * (named.get(cause) ?? 0)) / total : 0) + share * COMMON[cause],
    })),
  );
}

/** Chances that sum to 1, likeliest first. */
export function normalised(causes: readonly CauseChance[]): CauseChance[] {
  const total = causes.reduce((sum, { chance }) => sum + chance, 0);
  return causes
    .map(({ cause, chance }) => ({ cause, chance: chance / total }))
    .sort((a, b) => b.chance - a.chance);
}

function oddsOf(confidence: number): number {
  const held = Math.min(0.97, Math.max(0.01, confidence));
  return held / (1 - held);
}

function canBe(cause: Cause, line: ShaftLine | undefined): boolean {
  if (line === undefined) return true;
  const joints = line.joints.filter(({ kind }) => kind === 'universal').length;
  if (cause === 'joint-angle') return joints > 0;
  if (cause === 'joint-phase') return joints > 1;
  if (cause === 'misalignment') return line.joints.length > 0;
  return cause !== 'blade-pass' || line.propeller !== undefined;
}
