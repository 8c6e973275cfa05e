import type { ShaftLine } from '@sternline/core';

/** The most that measures of each kind may be off, either way. */
export interface LayoutTolerances {
  /** m, lengths and where things sit along a shaft. */
  readonly place: number;
  /** m */
  readonly diameter: number;
  /** rad */
  readonly angle: number;
}

/** What a ruler, calipers and a phone's level may be off. Common practice. */
export const SHED_TOLERANCES: LayoutTolerances = {
  place: 0.0005,
  diameter: 0.00001,
  angle: (0.5 * Math.PI) / 180,
};

/**
 * How far each measure of a line may be off, by its path; kinds of measure that are taken as exact are left out.
 *
 * @param line - a checked line
 * @param tolerances - of each kind of measure
 */
export function layoutTolerances(
  { shafts }: ShaftLine,
  { place, diameter, angle }: LayoutTolerances,
): Record<string, number> {
  const paths = shafts.flatMap((shaft, index): [string, number][] => {
    const own = `shafts[${index}]`;
    return [
      [`${own}.length`, place],
      ...shaft.supports.map((_, i): [string, number] => [`${own}.supports[${i}].at`, place]),
      ...shaft.discs.map((_, i): [string, number] => [`${own}.discs[${i}].at`, place]),
      [`${own}.outerDiameter`, diameter],
      [`${own}.elevation`, angle],
      [`${own}.plan`, angle],
    ];
  });
  return Object.fromEntries(paths.filter(([, tolerance]) => tolerance > 0));
}
