import { checkFinite, checkNotNegative } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { AxisMeasures, AxisStation, Measure } from './geometry-types.js';

/** @throws RangeError unless the measures of both axes are lengths that fix a direction each. */
export function checkMeasures({ motor, tube, joints }: AxisMeasures): void {
  checkAxis('motor', motor);
  checkAxis('tube', tube);
  if (!joints) return;
  checkMeasure('joints.motor', joints.motor);
  checkMeasure('joints.tube', joints.tube);
  const apart = joints.tube.value - joints.motor.value;
  const least = joints.motor.tolerance + joints.tube.tolerance;
  if (!(apart > least))
    throw refusal(
      'lineAxes: joints.tube',
      `aft of joints.motor by more than the tolerances of both (${least} m)`,
      apart,
    );
}

function checkAxis(name: string, stations: readonly [AxisStation, AxisStation]): void {
  stations.forEach((station, i) => {
    checkMeasure(`${name}[${i}].at`, station.at);
    if (station.height) checkMeasure(`${name}[${i}].height`, station.height);
    if (station.offset) checkMeasure(`${name}[${i}].offset`, station.offset);
  });
  const [first, second] = stations;
  for (const view of ['height', 'offset'] as const) {
    const lacking = [first, second].findIndex((station) => station[view] === undefined);
    if ((first[view] === undefined) !== (second[view] === undefined))
      throw refusal(
        `lineAxes: ${name}[${lacking}].${view}`,
        'given at both stations or at neither',
        undefined,
      );
  }
  const apart = Math.abs(second.at.value - first.at.value);
  const least = first.at.tolerance + second.at.tolerance;
  if (!(apart > least)) {
    const condition = `two stations further apart than the tolerances of both (${least} m)`;
    throw refusal(`lineAxes: ${name}`, condition, apart);
  }
}

function checkMeasure(where: string, { value, tolerance }: Measure): void {
  checkFinite(`lineAxes: ${where}.value`, value);
  checkNotNegative(`lineAxes: ${where}.tolerance`, tolerance);
}
