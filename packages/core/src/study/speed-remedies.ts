import type { ShaftLine } from '../line/types.js';
import { assess } from './assess.js';
import { clearSpeeds } from './clear-speeds.js';
import { costsOf } from './line-change.js';
import type { Tried } from './rank-remedies.js';
import type { RemedyOptions } from './remedy-types.js';
import { figure, makeStatement } from './statement.js';
import type { Assessment } from './types.js';

/** Speeds tried on either side of the wanted one. */
const TRIED = 4;

/** The same line at the nearest clear speeds below and above the wanted one. */
export function speedRemedies(
  line: ShaftLine,
  { before, options }: { readonly before: Assessment; readonly options: RemedyOptions },
): Tried[] {
  if (before.verdict === 'clear') return [];
  const { below, above } = clearSpeeds(before);
  return [below, above].flatMap((speeds) => {
    for (const speed of speeds.slice(0, TRIED)) {
      const assessment = assess(line, atSpeed(options, speed));
      if (assessment.verdict === 'clear') return [speedRemedy(line, before.speed, assessment)];
    }
    return [];
  });
}

/** A torque that was given grows with the square of the speed. */
function atSpeed({ torque, speed: wanted, ...rest }: RemedyOptions, speed: number): RemedyOptions {
  return { ...rest, speed, ...(torque === undefined ? {} : { torque: torque * (speed / wanted) ** 2 }) };
}

function speedRemedy(line: ShaftLine, wanted: number, assessment: Assessment): Tried {
  const figures = { speed: figure('speed', assessment.speed), wanted: figure('speed', wanted) };
  return {
    change: {
      heading: makeStatement('Run at {speed} in place of {wanted}', figures),
      costs: costsOf({
        work: 1,
        money: 1,
        destructive: 'no',
        takes: [makeStatement('throttle marked or limited at {speed}', figures)],
        buy: [],
      }),
    },
    kinds: ['speed'],
    line,
    assessment,
  };
}
