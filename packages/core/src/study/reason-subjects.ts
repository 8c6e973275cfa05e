import type { Assessment, Reason } from './types.js';

/** What a reason is about, figures aside: the band by its name, any other by its kind. */
function subjectOf({ kind, template }: Reason): string {
  return kind === 'band' ? `band ${/band of the (.*?) \(/.exec(template)?.[1] ?? template}` : kind;
}

/** How often each subject stands among the reasons of one severity. */
function subjects({ reasons }: Assessment, severity: Reason['severity']): Map<string, number> {
  const counts = new Map<string, number>();
  for (const reason of reasons) {
    if (reason.severity !== severity) continue;
    const subject = subjectOf(reason);
    counts.set(subject, (counts.get(subject) ?? 0) + 1);
  }
  return counts;
}

/** Reasons of one severity that `after` has and `before` has not, or not as often. */
export function newReasons(
  before: Assessment,
  after: Assessment,
  severity: Reason['severity'],
): readonly Reason[] {
  const known = subjects(before, severity);
  const found = subjects(after, severity);
  return after.reasons.filter((reason) => {
    const subject = subjectOf(reason);
    return reason.severity === severity && (found.get(subject) ?? 0) > (known.get(subject) ?? 0);
  });
}

/** A part that was short of strength and is now shorter: its reason after the change. */
export function weakened(before: Assessment, after: Assessment): Reason | undefined {
  return after.reasons.find((reason) => {
    const factor = reason.figures['factor']?.value;
    if (reason.severity !== 'inside' || factor === undefined) return false;
    const least = Math.min(
      ...before.reasons
        .filter(({ kind, severity }) => kind === reason.kind && severity === 'inside')
        .map(({ figures }) => figures['factor']?.value ?? Infinity),
    );
    return factor < least * (1 - 1e-9);
  });
}
