/** A tube as it is sold. */
export interface StockTube {
  /** m */
  readonly outerDiameter: number;
  /** m */
  readonly innerDiameter: number;
}

/*
 * Sizes from builders' published accounts: shafts of 1.6 to 8 mm with 4 mm the most common, threads M3 to M5, stern tubes of
 * 6 to 10 mm outside. 2.5, 7 and 10 mm and the walls of tubes are common practice of metal merchants, no source.
 */
const millimetres = (...sizes: readonly number[]): readonly number[] =>
  Object.freeze(sizes.map((size) => size / 1000));

/**
 * What a builder can buy: round bar, tube that serves as a shaft, stern tubes, set screws. All in m, ascending.
 *
 * @see builders' accounts and common practice, as said in `stock.ts`
 */
export const STOCK = Object.freeze({
  /** Ground bar of steel and stainless steel. */
  shaftDiameters: millimetres(1.6, 2, 2.5, 3, 4, 5, 6, 7, 8, 10),
  /** Drawn tube of steel, stainless steel or aluminium with walls of 1 mm, 1.5 from 12 mm up. */
  shaftTubes: tubes([6, 4], [8, 6], [10, 8], [12, 9]),
  /** Drawn brass tube with walls of 0.45 to 1 mm. */
  sternTubes: tubes([6, 5.1], [7, 6.1], [8, 7.1], [9, 8], [10, 9], [12, 10]),
  /** Metric set screws with a hexagon socket. */
  setScrewSizes: millimetres(2, 2.5, 3, 4, 5, 6),
});

function tubes(...sizes: readonly (readonly [outer: number, inner: number])[]): readonly StockTube[] {
  return Object.freeze(
    sizes.map(([outer, inner]) => ({ outerDiameter: outer / 1000, innerDiameter: inner / 1000 })),
  );
}
