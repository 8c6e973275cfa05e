import { checkReadings } from './check-readings.js';
import { judgeAlignment } from './judge-alignment.js';
import { readCoupling, type PlaneLine } from './read-coupling.js';
import type { ClockReadings, CouplingReadings, InBothPlanes, MotorShims } from './shim-types.js';

/**
 * Offset and angularity of a motor against the shaft it drives, and how to move its feet to bring it in line.
 *
 * With s the distance from the reference plane towards the motor, its axis lies at y(s) = offset − angularity · s, and a
 * foot at s moves by angularity · s − offset:
 *
 *   rim and face        offset = (bottom − top)/2 of the rim dial, angularity = (bottom − top)/D of the face dial
 *   reverse indicator   offset as before, angularity = (y(0) − y(L))/L, y(L) = −(bottom − top)/2 of the other dial
 *   ruler and feelers   offset = (top − bottom)/2 of the steps, angularity = (top − bottom)/D of the gaps
 *
 * and the same across with port for top and starboard for bottom. As a rim-and-face rule: F = bf·B/D − br/2.
 *
 * @param readings - one kind of readings, all lengths in m; dials count up as the stem is pushed in
 * @returns m and rad in both planes, positive up and to port: raise the feet, move them to port. With a `speed`, a
 *   verdict by the usual limits of flexible couplings
 * @throws RangeError where a reading is not finite, a diameter, separation or spacer is not greater than 0, or the
 *   rear feet are not further from the coupling than the front ones
 * @remarks First order in the angle, as all such rules are: shim, then read again.
 *   Both shafts are to be turned together, so that run-out of the hubs drops out, and kept from floating endways.
 *   Where a universal joint is to run at an angle, align on a rigid dummy in its place, or take the angle as wanted.
 * @example
 * const shims = shimMotor({
 *   kind: 'rim-and-face',
 *   rim: { top: 0, bottom: -0.0003, port: -0.00015, starboard: -0.00015 },
 *   face: { top: 0, bottom: 0.0002, port: 0.0001, starboard: 0.0001 },
 *   faceDiameter: 0.1,
 *   feet: { front: 0.15, rear: 0.4 },
 * });
 * shims.feet.front.vertical // → 0.00045
 * shims.feet.rear.vertical // → 0.00095
 * shims.feet.rear.horizontal // → 0
 * @see https://fdocuments.us/document/formula-for-face-and-rim-alignment-calculation.html
 */
export function shimMotor(readings: CouplingReadings): MotorShims {
  checkReadings(readings);
  const vertical = readCoupling(readings, 'vertical');
  const horizontal = readCoupling(readings, 'horizontal');
  const both = (figure: (line: PlaneLine) => number): InBothPlanes => ({
    vertical: figure(vertical),
    horizontal: figure(horizontal),
  });
  const { front, rear } = readings.feet;
  const axis = { offset: both(({ offset }) => offset), angularity: both(({ angularity }) => angularity) };
  const { speed, spacer } = readings;
  return {
    ...axis,
    feet: {
      front: both(({ offset, angularity }) => angularity * front - offset),
      rear: both(({ offset, angularity }) => angularity * rear - offset),
    },
    tolerance: {
      offset: both(({ reachAt }) => reachAt(0)),
      angularity: both(({ angularityReach }) => angularityReach),
      front: both(({ reachAt }) => reachAt(front)),
      rear: both(({ reachAt }) => reachAt(rear)),
    },
    closure: Math.max(...clocksOf(readings).map(contradiction)),
    assumed: assumptions(readings),
    ...(speed === undefined ? {} : { verdict: judgeAlignment(axis, { speed, spacer }) }),
  };
}

function clocksOf(readings: CouplingReadings): readonly ClockReadings[] {
  switch (readings.kind) {
    case 'rim-and-face':
      return [readings.rim, readings.face];
    case 'reverse-indicator':
      return [readings.onShaft, readings.onMotor];
    case 'ruler-and-feeler':
      return [readings.gap];
  }
}

/** Opposite readings of a round and flat hub have the same sum all round. */
function contradiction({ top, bottom, port, starboard }: ClockReadings): number {
  return Math.abs(top + bottom - port - starboard);
}

function assumptions(readings: CouplingReadings): string[] {
  if (readings.kind !== 'ruler-and-feeler') return [];
  const { bottom, starboard } = readings.step;
  if (bottom !== undefined && starboard !== undefined) return [];
  const sides = [
    ...(bottom === undefined ? ['bottom'] : []),
    ...(starboard === undefined ? ['starboard'] : []),
  ];
  return [`No step was read at ${sides.join(' and ')}: both hubs are taken to have one diameter.`];
}
