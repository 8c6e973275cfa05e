import type { Evidence } from './evidence.js';
import { mainsLine } from './mains-line.js';
import { orderEvidence } from './order-evidence.js';
import type { FixedFrequency } from './trials-types.js';
import type { Cause } from './types.js';
import type { CauseCase } from './weigh-trials.js';

interface Seen {
  readonly evidence: readonly Evidence[];
  readonly fixed: readonly FixedFrequency[];
}

/** Names the group of each cause, and weighs lines at a fixed frequency. */
export function settleTrials(cases: readonly CauseCase[], seen: Seen): CauseCase[] {
  const twice = isTwiceLarger(seen.evidence);
  const blades = seen.evidence[0]?.line?.propeller?.blades;
  return cases.map((one) => ({
    ...one,
    group: groupOf(one.cause, { twice, blades }),
    other: one.other * fixedLikelihood(one.cause, seen),
  }));
}

function groupOf(
  cause: Cause,
  { twice, blades }: { readonly twice: boolean; readonly blades: number | undefined },
): string {
  if (cause === 'unbalance' || cause === 'bent-shaft' || cause === 'whirl') return 'once';
  if (cause === 'misalignment') return twice ? 'twice' : 'once';
  if (cause === 'joint-angle' || cause === 'joint-phase') return 'twice';
  if (cause === 'blade-pass') return blades === 2 ? 'twice' : 'blades';
  if (cause === 'looseness' || cause === 'rubbing') return 'row';
  if (cause === 'structural-resonance' || cause === 'electrical') return 'fixed';
  return cause;
}

function isTwiceLarger(all: readonly Evidence[]): boolean {
  const sum = (order: number): number =>
    all.reduce((total, evidence) => total + (orderEvidence(evidence, order)?.amplitude ?? 0), 0);
  return sum(2) > sum(1);
}

/** A line of its own that stays put over several speeds is what a resonance or the mains would show. */
function fixedLikelihood(cause: Cause, { evidence, fixed }: Seen): number {
  if (cause !== 'structural-resonance' && cause !== 'electrical') return 1;
  if (spanOf(evidence) < 1.05) return 1;
  const [first] = evidence;
  const isMains = ({ frequency }: FixedFrequency): boolean =>
    first !== undefined &&
    mainsLine(frequency, {
      sampleRate: first.recording.sampleRate,
      resolution: first.measured.resolution,
    }) !== undefined;
  const own = fixed.filter((line) => isMains(line) === (cause === 'electrical'));
  return own.length > 0 ? 1 : 0.1;
}

function spanOf(all: readonly Evidence[]): number {
  const speeds = all.map(({ speed }) => speed);
  return Math.max(...speeds) / Math.min(...speeds);
}
