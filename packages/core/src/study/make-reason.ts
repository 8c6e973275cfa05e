import { makeStatement } from './statement.js';
import type { Figure, Reason, ReasonKind } from './types.js';

/** A reason, worded. */
export function makeReason(
  kind: ReasonKind,
  parts: {
    readonly severity: Reason['severity'];
    readonly template: string;
    readonly figures: Readonly<Record<string, Figure>>;
    readonly source: string;
  },
): Reason {
  const { severity, template, figures, source } = parts;
  return { kind, severity, source, ...makeStatement(template, figures) };
}
