import type { Shaft, ShaftLine } from '../line/types.js';

/** The longest stretch between two supports that a builder could change. */
export interface MainSpan {
  /** Index of the shaft. */
  readonly index: number;
  readonly shaft: Shaft;
  /** m from the motor end of the shaft. */
  readonly from: number;
  readonly to: number;
}

/** The longest span of a line, the motor's own shaft left out where there is another; undefined where nothing spans. */
export function mainSpan({ shafts }: ShaftLine): MainSpan | undefined {
  const spans = shafts.flatMap((shaft, index) => {
    if (index === 0 && shafts.length > 1) return [];
    const places = shaft.supports.map(({ at }) => at).sort((a, b) => a - b);
    return places.slice(1).map((to, i) => ({ index, shaft, from: places[i] ?? 0, to }));
  });
  const [first, ...rest] = spans;
  return first && rest.reduce((best, one) => (one.to - one.from > best.to - best.from ? one : best), first);
}
