import type { LineLoads } from '../loads/types.js';
import type { ShaftLine } from '../line/types.js';
import type { SpeedFluctuation } from '../motion/types.js';
import { bandReasons, clearance } from './band-reasons.js';
import { driveReasons } from './drive-reasons.js';
import { jointReasons } from './joint-reasons.js';
import { loadReasons } from './load-reasons.js';
import type { AvoidBand, DriveAssessment, JointAssessment, Reason, SpeedLimit, Verdict } from './types.js';

const SEVERITY: readonly Reason['severity'][] = ['inside', 'near', 'note', 'clear'];

interface Facts {
  readonly line: ShaftLine;
  readonly speed: number;
  readonly joints: readonly JointAssessment[];
  readonly fluctuation: SpeedFluctuation;
  readonly bands: readonly AvoidBand[];
  readonly limit: SpeedLimit;
  readonly loads: LineLoads | undefined;
  readonly drive: DriveAssessment | undefined;
}

/** Every reason that bears on the verdict, most important first. */
export function findReasons(facts: Facts): Reason[] {
  const reasons = [
    ...bandReasons(facts),
    ...loadReasons(facts),
    ...driveReasons(facts),
    ...jointReasons(facts),
    ...clearance(facts),
  ];
  return reasons
    .map((reason, i) => ({ reason, rank: SEVERITY.indexOf(reason.severity) * 1000 + i }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ reason }) => reason);
}

/** The worst that any reason says. */
export function verdictOf(reasons: readonly Reason[]): Verdict {
  if (reasons.some((reason) => reason.severity === 'inside')) return 'inside';
  return reasons.some((reason) => reason.severity === 'near') ? 'near' : 'clear';
}
