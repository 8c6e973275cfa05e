import type { ShaftLine, SpeedFluctuation } from '@sternline/core';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';

/** The residual swing that makers of cardan shafts hold a line to: that of one joint at 3°. */
const SMOOTH = 0.0027;

/** How evenly the propeller turns, in a sentence. */
export function turningSentence(
  line: ShaftLine,
  { fluctuation, units }: { fluctuation: SpeedFluctuation; units: Units },
): string {
  const universal = line.joints.filter((joint) => joint.kind === 'universal').length;
  if (universal === 0)
    return 'There is no universal joint in this line: the propeller turns exactly as the motor does.';
  const swing = formatFigure(fluctuation.degree, 'share', units);
  const many = universal === 1 ? 'The joint makes' : 'Together the joints make';
  if (fluctuation.degree < 1e-5) {
    return 'The joints cancel each other: the propeller turns as evenly as the motor.';
  }
  const judged =
    fluctuation.degree <= SMOOTH
      ? 'That is within the 0.27 % that cardan shafts are held to.'
      : `Cardan shafts are held to 0.27 %, which one joint reaches at 3°.`;
  return `${many} the propeller’s speed swing by ${swing}, twice a turn. ${judged}`;
}
