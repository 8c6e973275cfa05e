import type { Candidate, Evidence } from './evidence.js';
import { findBentShaft } from './find-bent-shaft.js';
import { findBladePass } from './find-blade-pass.js';
import { findElectrical } from './find-electrical.js';
import { findJointAngle } from './find-joint-angle.js';
import { findJointPhase } from './find-joint-phase.js';
import { findLooseness } from './find-looseness.js';
import { findMisalignment } from './find-misalignment.js';
import { findRubbing } from './find-rubbing.js';
import { findStructural } from './find-structural.js';
import { findTorsional } from './find-torsional.js';
import { findUnbalance } from './find-unbalance.js';
import { findUnexplained } from './find-unexplained.js';
import { findWhirl } from './find-whirl.js';

const RULES: readonly ((evidence: Evidence) => Candidate | undefined)[] = [
  findUnbalance,
  findBentShaft,
  findMisalignment,
  findJointAngle,
  findJointPhase,
  findBladePass,
  findWhirl,
  findTorsional,
  findLooseness,
  findRubbing,
  findStructural,
  findElectrical,
  findUnexplained,
];

/** Every cause that the evidence allows. */
export function findCandidates(evidence: Evidence): Candidate[] {
  return RULES.flatMap((rule) => rule(evidence) ?? []);
}
