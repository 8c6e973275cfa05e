import { refusal } from '../internal/refuse.js';
import { numberAt, type NumberAt } from '../line/number-at.js';
import { parseShaftLine } from '../line/parse-shaft-line.js';
import type { ShaftLine } from '../line/types.js';
import type { Random } from '../numerics/random.js';
import type { Tolerance } from './tolerance-types.js';

/** One measure that is not known exactly. */
export interface ToleranceAxis {
  readonly at: NumberAt;
  readonly nominal: number;
  readonly draw: (random: Random) => number;
}

/** Draws for one sample before the tolerances are called too wide. */
const MOST_DRAWS = 1000;

/** The measures of a study, checked against the line. */
export function toleranceAxes(
  line: ShaftLine,
  tolerances: Readonly<Record<string, Tolerance>>,
  caller = 'toleranceStudy',
): ToleranceAxis[] {
  return Object.entries(tolerances).map(([path, tolerance]) => {
    const at = numberAt(path);
    const nominal = at.read(line);
    const wide = typeof tolerance === 'number' ? tolerance : tolerance.standardDeviation;
    if (!(Number.isFinite(wide) && wide >= 0)) {
      throw refusal(`${caller}: tolerances['${path}']`, 'a finite number of at least 0', wide);
    }
    const draw =
      typeof tolerance === 'number'
        ? (random: Random) => nominal + tolerance * (2 * random.uniform() - 1)
        : (random: Random) => nominal + wide * random.normal();
    return { at, nominal, draw };
  });
}

export interface DrawnLine {
  readonly line: ShaftLine;
  readonly values: readonly number[];
  readonly redrawn: number;
}

/** A line with every measure drawn within its tolerance; one that cannot be built is drawn anew. */
export function drawLine(
  line: ShaftLine,
  {
    axes,
    random,
    caller = 'toleranceStudy',
  }: { readonly axes: readonly ToleranceAxis[]; readonly random: Random; readonly caller?: string },
): DrawnLine {
  for (let redrawn = 0; redrawn < MOST_DRAWS; redrawn++) {
    const values = axes.map((axis) => axis.draw(random));
    const drawn = axes.reduce((changed, { at }, i) => at.write(changed, values[i] ?? 0), line);
    if (canBeBuilt(drawn)) return { line: drawn, values, redrawn };
  }
  const widest = axes.map(({ at }) => at.path).join(', ');
  throw new RangeError(
    `${caller}: tolerances must leave lines that can be built, got none in ${MOST_DRAWS} draws of ${widest}`,
  );
}

function canBeBuilt(line: ShaftLine): boolean {
  try {
    parseShaftLine(line);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}
