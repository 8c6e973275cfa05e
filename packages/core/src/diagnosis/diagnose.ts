import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { describeLimits } from './describe-limits.js';
import { findCandidates } from './find-candidates.js';
import { gatherEvidence } from './gather-evidence.js';
import { measureTraits } from './measure-traits.js';
import type { Diagnosis, DiagnosisInput } from './types.js';
import { weighCandidates } from './weigh-candidates.js';

/**
 * Reads a recording at a known shaft speed into orders, peaks and findings, each with its evidence and the check that would
 * separate it from its rivals.
 *
 * @param input - `recording`, `speed` in rad/s (refined within 2 % where the recording shows its orders), the `line` if known,
 *   and in `axial` the name of the channel along the shaft if one is
 * @returns orders and peaks with amplitudes in the unit of their channel; findings strongest first, none where nothing stands
 *   above the noise; and in `limits` what the recording cannot show
 * @throws RangeError for a speed that is not greater than 0 or a recording without channels
 * @remarks A finding is a cause that the evidence supports, not a certainty: once a turn can be unbalance, a bend or a
 *   hub off centre. An order that the sampling lays on a likely other one supports no finding.
 *   Confidences were fitted on the tuning seeds of a simulation that takes nothing from the library; on other seeds of it they lie
 *   0.02 from the share that was right, on average (docs/diagnosis-trials.md). One generator made both, so on a real line a
 *   confidence is a judgement. Swings in twist, whirl of any order but the first, motor poles, switching and orders that
 *   share a place are judged, not fitted.
 * @example
 * ```ts
 * let state = 2024;
 * const noise = () => (state = (16807 * state) % 2147483647) / 2147483647 - 0.5;
 * const samples = Float64Array.from({ length: 4000 }, (_, n) => 0.8 * Math.sin((2 * Math.PI * 24 * n) / 200) + 0.2 * noise());
 * const recording = { name: 'bench', sampleRate: 200, channels: [{ name: 'x', unit: 'm/s²', samples }],
 *   sampling: { kind: 'motion', gaps: [], clipping: [] } };
 * const { findings } = diagnose({ recording, speed: 2 * Math.PI * 24 });
 * findings[0].cause // → 'unbalance'
 * findings[0].evidence[0] // → 'Order 1 at 24.0 Hz stands at 0.799 m/s² (± 0.002) on x.'
 * ```
 */
export function diagnose(input: DiagnosisInput): Diagnosis {
  checkPositive('diagnose: speed', input.speed);
  if (input.recording.channels.length === 0)
    throw refusal('diagnose: recording', 'one with a channel or more', 'none');
  const evidence = gatherEvidence(input);
  return {
    orders: evidence.readings,
    peaks: evidence.peaks,
    findings: weighCandidates(findCandidates(evidence), measureTraits(evidence)),
    limits: describeLimits(evidence),
  };
}
