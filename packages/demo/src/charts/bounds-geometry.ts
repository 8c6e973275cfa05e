import { max, scaleLinear } from 'd3';

/** The range of one mode, in the unit shown. */
export interface BoundRow {
  readonly name: string;
  readonly lower: number;
  readonly estimate: number;
  readonly upper: number;
}

export interface BoundsFigure {
  readonly left: number;
  readonly right: number;
  readonly base: number;
  readonly rows: readonly {
    readonly name: string;
    readonly y: number;
    readonly from: number;
    readonly to: number;
    readonly mark: number;
  }[];
  readonly ticks: readonly { readonly x: number; readonly value: number }[];
  /** px of the wanted speed. */
  readonly wanted: number;
}

/** px for each mode, and for the axis under them. */
export const BOUND_ROW = 52;
export const BOUND_FOOT = 40;

/**
 * Lays out the ranges of the critical speeds, one row for each mode, over one axis of speed.
 *
 * @param input - rows and the wanted speed, in the unit shown
 * @param width - px
 */
export function layoutBounds(
  { rows, wanted }: { readonly rows: readonly BoundRow[]; readonly wanted: number },
  width: number,
): BoundsFigure {
  const top = 1.05 * Math.max(wanted, max(rows, ({ upper }) => upper) ?? 1);
  const x = scaleLinear([0, top], [10, width - 14]);
  return {
    left: 10,
    right: width - 14,
    base: rows.length * BOUND_ROW + 14,
    rows: rows.map(({ name, lower, estimate, upper }, index) => ({
      name,
      y: 38 + index * BOUND_ROW,
      from: x(lower),
      to: x(upper),
      mark: x(estimate),
    })),
    ticks: x.ticks(width > 560 ? 8 : 4).map((value) => ({ value, x: x(value) })),
    wanted: x(wanted),
  };
}
