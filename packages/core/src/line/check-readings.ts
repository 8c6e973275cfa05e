import { checkFinite, checkNotNegative, checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ClockReadings, CouplingReadings } from './shim-types.js';

/** @throws RangeError unless the readings are finite lengths over possible distances. */
export function checkReadings(readings: CouplingReadings): void {
  const { feet, tolerance = 0, speed, spacer } = readings;
  checkFinite('shimMotor: feet.front', feet.front);
  checkFinite('shimMotor: feet.rear', feet.rear);
  if (!(feet.rear > feet.front))
    throw refusal(
      'shimMotor: feet.rear',
      `greater than feet.front (${feet.front} m): further from the coupling`,
      feet.rear,
    );
  checkNotNegative('shimMotor: tolerance', tolerance);
  if (speed !== undefined) checkPositive('shimMotor: speed', speed);
  if (spacer !== undefined) checkPositive('shimMotor: spacer', spacer);
  switch (readings.kind) {
    case 'rim-and-face':
      checkClock('rim', readings.rim);
      checkClock('face', readings.face);
      checkPositive('shimMotor: faceDiameter', readings.faceDiameter);
      checkFinite('shimMotor: sag', readings.sag ?? 0);
      return;
    case 'reverse-indicator':
      checkClock('onShaft', readings.onShaft);
      checkClock('onMotor', readings.onMotor);
      checkPositive('shimMotor: separation', readings.separation);
      checkFinite('shimMotor: sag', readings.sag ?? 0);
      return;
    case 'ruler-and-feeler':
      checkClock('step', { bottom: 0, starboard: 0, ...readings.step });
      checkClock('gap', readings.gap);
      checkPositive('shimMotor: faceDiameter', readings.faceDiameter);
      return;
    default:
      throw refusal(
        'shimMotor: kind',
        'one of rim-and-face, reverse-indicator, ruler-and-feeler',
        (readings as { readonly kind?: unknown }).kind,
      );
  }
}

function checkClock(name: string, readings: Partial<ClockReadings>): void {
  for (const side of ['top', 'bottom', 'port', 'starboard'] as const)
    checkFinite(`shimMotor: ${name}.${side}`, readings[side] ?? NaN);
}
