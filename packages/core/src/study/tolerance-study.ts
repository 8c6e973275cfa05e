import { checkPositive, checkWhole } from '../internal/checks.js';
import type { ShaftLine } from '../line/types.js';
import { createRandom } from '../numerics/random.js';
import { drawLine, toleranceAxes } from './draw-line.js';
import { gatherStudy } from './gather-study.js';
import { sampleFigures, sampleLayout, type SampleFigures } from './sample-figures.js';
import type { ToleranceOptions, ToleranceStudy } from './tolerance-types.js';

/** Samples between two looks at the signal and two reports of progress. */
const BATCH = 64;

const MOST_SAMPLES = 1_000_000;

/**
 * How far the errors of measuring spread the critical speeds, the bands and the verdict; the chance that the wanted speed
 * falls in a band; and which measure is most worth taking again.
 *
 * Monte Carlo: each sample draws every measure within its tolerance and works the line out anew. The share of variance that
 * goes with one measure is its squared correlation with the critical speed whose band lies nearest to the wanted speed.
 *
 * @param line - a checked line, as measured
 * @param options - `speed` in rad/s; `tolerances` by path, half-widths or standard deviations in the measure's own unit;
 *   `samples`, 1 to 1 000 000, default 1000; `seed`, default 1; `margins` as in `assess`; `onProgress`; `signal`
 * @returns spreads with every sample, chances with their standard errors, and sensitivities, largest first
 * @throws RangeError where an option is out of its domain, a path leads to no number of the line, or a tolerance is so wide
 *   that hardly any draw gives a line that can be built; the signal's reason where it was aborted
 * @remarks Measures are drawn independently. Draws that cannot be built (a bush beyond the end of its shaft) are drawn anew
 *   and counted. Bands are those of whirl; the verdict is on them alone. The call does not return before it is done: in a page,
 *   run it in a worker, which a cancel can end; `signal` is for callers whose abort can come from `onProgress`.
 * @example
 * const tolerances = { 'shafts[1].outerDiameter': 0.00002, 'shafts[1].supports[1].at': 0.001 };
 * const study = toleranceStudy(exampleLine(), { speed: 345, tolerances, samples: 200, seed: 3 });
 * study.chanceInBand // → 1
 * study.sensitivities[0].path // → 'shafts[1].supports[1].at'
 * @see JCGM 100:2008, "Guide to the expression of uncertainty in measurement", 4.3.7 (rectangular spreads), and JCGM 101:2008
 *   (propagation by Monte Carlo)
 */
export function toleranceStudy(line: ShaftLine, options: ToleranceOptions): ToleranceStudy {
  const { speed, tolerances, samples = 1000, seed = 1, margins, onProgress, signal } = options;
  checkPositive('toleranceStudy: speed', speed);
  checkWhole('toleranceStudy: samples', samples, [1, MOST_SAMPLES]);
  const axes = toleranceAxes(line, tolerances);
  const layout = sampleLayout(line, { speed, margins });
  const random = createRandom(seed);
  const drawn: SampleFigures[] = [];
  const inputs = axes.map(() => new Float64Array(samples));
  let redrawn = 0;
  for (let i = 0; i < samples; i++) {
    if (i % BATCH === 0) {
      if (signal?.aborted) throw abortError(signal.reason);
      onProgress?.(i / samples);
    }
    const draw = drawLine(line, { axes, random });
    redrawn += draw.redrawn;
    draw.values.forEach((value, axis) => {
      const column = inputs[axis];
      if (column) column[i] = value;
    });
    drawn.push(sampleFigures(draw.line, layout));
  }
  onProgress?.(1);
  return gatherStudy({ layout, drawn, inputs, axes, redrawn, seed, nominal: sampleFigures(line, layout) });
}

function abortError(reason: unknown): Error {
  return reason instanceof Error ? reason : new Error('toleranceStudy: aborted');
}
