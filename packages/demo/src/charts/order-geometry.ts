/** The amplitude of one order with its standard error, in any one unit. */
export interface OrderAmplitude {
  readonly amplitude: number;
  readonly amplitudeError: number;
}

/** Shares of the width of a bar, 0 … 1. */
export interface OrderBar {
  readonly length: number;
  /** Where the error whisker starts and ends. */
  readonly whisker: readonly [from: number, to: number];
}

/**
 * The bars of an order table on one common scale, whiskers included.
 *
 * @param orders - amplitudes in one unit
 * @returns one bar each
 */
export function orderBars(orders: readonly OrderAmplitude[]): OrderBar[] {
  const reach =
    orders.reduce((most, order) => Math.max(most, order.amplitude + order.amplitudeError), 0) || 1;
  return orders.map(({ amplitude, amplitudeError }) => ({
    length: amplitude / reach,
    whisker: [Math.max(0, amplitude - amplitudeError) / reach, (amplitude + amplitudeError) / reach],
  }));
}
