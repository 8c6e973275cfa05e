import { checkPositive } from '../internal/checks.js';
import type { Shaft, ShaftLine } from '../line/types.js';
import type { BearingSpan } from './types.js';

/** Bearing spacing in full-size practice, in shaft diameters. Builders' and designers' guides, from the practice notes. */
const SHORT = 20;
const LONG = 40;
/** Strut to hub about one diameter; two is long. Builders' accounts; the two is our choice. */
const LONG_OVERHANG = 2;
/** Germanischer Lloyd, Rules I-1-2, section 4 D.5: K₂ for white metal in oil, d and l in mm, n in rpm. From memory. */
const CLASS_FACTOR = 8400;
/** Its other rule below 350 rpm, l = K₁ √d. From memory. */
const CLASS_FACTOR_SLOW = 450;
const CLASS_SLOW = 350;

/**
 * How far apart the supports of a line stand, in shaft diameters.
 *
 * @param line - a checked line
 * @param options - `speed` in rad/s, for the class rule: l = 450 √d up to 350 rpm, 8400 √(d/n) above (mm, rpm)
 * @returns spans between supports of each shaft, and the overhang behind the last support of the last shaft
 * @throws RangeError where the speed is not greater than 0
 * @remarks A habit of practice, not a limit: whirl decides. The class rule is made for merchant ships' shafts.
 * @example
 * const [, span, overhang] = bearingSpans(exampleLine(), { speed: 345 });
 * span.diameters // → 61.6
 * span.verdict // → 'long'
 * overhang.diameters // → 8.4
 * @see 20 to 40 diameters: full-size practice; Germanischer Lloyd, Rules I-1-2, section 4 D.5, from memory
 */
export function bearingSpans(line: ShaftLine, { speed }: { readonly speed: number }): BearingSpan[] {
  checkPositive('bearingSpans: speed', speed);
  return line.shafts.flatMap((shaft, index) => {
    const places = shaft.supports.map(({ at }) => at).sort((a, b) => a - b);
    const spans = places.slice(1).map((to, i) => span(shaft, { index, from: places[i] ?? 0, to, speed }));
    const last = places.at(-1);
    const behind = index === line.shafts.length - 1 && last !== undefined && last < shaft.length;
    return behind ? [...spans, overhang(shaft, index, last)] : spans;
  });
}

interface SpanEnds {
  readonly index: number;
  readonly from: number;
  readonly to: number;
  readonly speed: number;
}

function span({ outerDiameter }: Shaft, { index, from, to, speed }: SpanEnds): BearingSpan {
  const length = to - from;
  const diameters = length / outerDiameter;
  return {
    shaft: index,
    kind: 'span',
    from,
    to,
    length,
    diameters,
    classLength: classLength(outerDiameter, speed),
    verdict: diameters < SHORT ? 'short' : diameters <= LONG ? 'usual' : 'long',
  };
}

function classLength(diameter: number, speed: number): number {
  const millimetres = diameter * 1000;
  const turns = (speed * 30) / Math.PI;
  const longest =
    turns > CLASS_SLOW
      ? CLASS_FACTOR * Math.sqrt(millimetres / turns)
      : CLASS_FACTOR_SLOW * Math.sqrt(millimetres);
  return longest / 1000;
}

function overhang({ length: end, outerDiameter }: Shaft, index: number, from: number): BearingSpan {
  const length = end - from;
  const diameters = length / outerDiameter;
  const verdict = diameters < 1 ? 'short' : diameters <= LONG_OVERHANG ? 'usual' : 'long';
  return { shaft: index, kind: 'overhang', from, to: end, length, diameters, verdict };
}
