import type { ShaftLine, ShaftPhase, YokePhase } from '@sternline/core';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';

/** rad: nobody sets a yoke finer than this by eye. */
const BY_EYE = (0.5 * Math.PI) / 180;

/** Which way to turn a yoke and what it gives, or that it stands well. */
export function phaseSentence(
  { degree, degreeAtBest }: YokePhase,
  { shaft, turn, sense, degreeOneDegreeOff }: ShaftPhase,
  line: ShaftLine,
  units: Units,
): string {
  const name = line.shafts[shaft]?.name ?? '';
  const whose = `the ${name === '' ? `shaft ${shaft + 1}` : name}`;
  const share = (value: number) => formatFigure(value, 'share', units);
  const cost = costSentence(degreeOneDegreeOff, degreeAtBest, units);
  if (sense === 'none' || Math.abs(turn) < BY_EYE) {
    return `The yokes of ${whose} stand as they should: ${degree < 1e-5 ? 'the propeller turns evenly' : `the line swings by ${share(degree)}, and no turn of a yoke betters it`}. ${cost}`;
  }
  const angle = formatFigure(Math.abs(turn), 'angle', units);
  return `Turn the yoke at the aft end of ${whose} by ${angle} ${sense}, looking aft from the motor: the swing falls from ${share(degree)} to ${share(degreeAtBest)}. ${cost}`;
}

function costSentence(off: number, best: number, units: Units): string {
  const cost = off - best;
  return cost < 1e-5
    ? 'A degree of error there costs next to nothing.'
    : `A degree of error there costs ${formatFigure(cost, 'share', units)}.`;
}

/** Where the yoke goes on a spline, in a sentence. */
export function toothSentence({ spline }: ShaftPhase, units: Units): string {
  if (!spline) return '';
  const { teeth, degree, degreeOneToothOff } = spline;
  const share = (value: number) => formatFigure(value, 'share', units);
  const move =
    teeth === 0
      ? 'The tooth it sits on is the nearest'
      : `The nearest place is ${Math.abs(teeth)} ${Math.abs(teeth) === 1 ? 'tooth' : 'teeth'} ${teeth > 0 ? 'anticlockwise' : 'clockwise'}`;
  return `${move}, which leaves ${share(degree)}; one tooth off would make it ${share(degreeOneToothOff)}.`;
}
