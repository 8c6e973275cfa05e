import { refusal } from '../internal/refuse.js';
import type { LineAxes } from './geometry-types.js';
import { parseShaftLine } from './parse-shaft-line.js';
import type { ShaftLine } from './types.js';

/**
 * A line with the directions of its shafts taken from measured axes.
 *
 * @param line - a shaft line as `parseShaftLine` gives it; pieces tied by rigid joints count as one shaft
 * @param axes - what `lineAxes` gives: two axes for a line that bends at one joint, three for one that bends at two
 * @returns a new line, checked; lengths, supports and everything else are left as they are
 * @throws RangeError where the line bends at another number of joints than the axes; ShaftLineError where a joint would
 *   stand at 90° or more
 * @remarks The length of an intermediate shaft is not changed, since its supports go with it: compare
 *   `axes.intermediate.length` with it.
 * @example
 * const mm = (value) => ({ value: value / 1000, tolerance: 0.0005 });
 * const axes = lineAxes({
 *   motor: [{ at: mm(0), height: mm(40) }, { at: mm(80), height: mm(40) }],
 *   tube: [{ at: mm(140), height: mm(30) }, { at: mm(440), height: mm(-45) }],
 * });
 * jointAngles(alignLine(exampleLine(), axes)) // → [0.2450]
 */
export function alignLine(line: ShaftLine, axes: LineAxes): ShaftLine {
  const { motor, tube, intermediate } = axes;
  const directions = intermediate ? [motor, intermediate, tube] : [motor, tube];
  const bends = line.joints.filter(({ kind }) => kind !== 'rigid').length;
  if (bends !== directions.length - 1) {
    const condition = `a line that bends at ${directions.length - 1} joint${intermediate ? 's' : ''}, as the axes do`;
    throw refusal('alignLine: line', condition, bends);
  }
  let run = 0;
  const shafts = line.shafts.map((shaft, index) => {
    if (index > 0 && line.joints[index - 1]?.kind !== 'rigid') run += 1;
    const axis = directions[run] ?? tube;
    return { ...shaft, elevation: axis.elevation.value, plan: axis.plan.value };
  });
  return parseShaftLine({ ...line, shafts });
}
