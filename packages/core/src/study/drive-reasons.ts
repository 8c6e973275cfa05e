import { makeReason } from './make-reason.js';
import { figure } from './statement.js';
import type { DriveAssessment, Reason } from './types.js';

const SOURCE =
  'linear motor model and the propeller’s torque, held at the quay; under way it turns a little faster';

/** Whether the motor gets the line to the speed, and with how much throttle. */
export function driveReasons({
  speed,
  drive,
}: {
  readonly speed: number;
  readonly drive: DriveAssessment | undefined;
}): Reason[] {
  const full = drive?.fullThrottle;
  if (!full) return [];
  if (drive.throttle === undefined) {
    return [
      makeReason('motor-reach', {
        severity: 'note',
        template: 'At full throttle the motor turns this propeller at {full}: {speed} is beyond it.',
        figures: { full: figure('speed', full.speed), speed: figure('speed', speed) },
        source: SOURCE,
      }),
    ];
  }
  return [
    makeReason('motor-reach', {
      severity: 'clear',
      template: '{speed} takes {throttle} of the throttle; at full throttle it turns at {full}.',
      figures: {
        speed: figure('speed', speed),
        throttle: figure('share', drive.throttle),
        full: figure('speed', full.speed),
      },
      source: SOURCE,
    }),
  ];
}
