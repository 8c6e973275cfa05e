import { figureText } from './figure-text.js';
import type { OrderMark, SpectrumLines } from './spectrum-geometry.js';

/** What the reader points at in a spectrum, in words. */
export interface SpectrumPointing {
  /** Hz */
  readonly at: number;
  readonly unit: string;
  readonly orders: readonly OrderMark[];
  /** Hz, turns a second of the shaft. */
  readonly shaftFrequency: number | undefined;
}

/**
 * Reads the spectrum at a frequency: figure, multiple of shaft speed, and the orders that appear there.
 *
 * @param lines - the spectrum
 * @param pointing - where, and what is marked
 * @returns one line of text
 */
export function spectrumReadout(lines: SpectrumLines, pointing: SpectrumPointing): string {
  const index = Math.max(0, Math.min(lines.amplitude.length - 1, Math.round(pointing.at / lines.step)));
  const frequency = index * lines.step;
  const parts = [
    `${figureText(frequency, 4)} Hz`,
    `${figureText(lines.amplitude[index] ?? 0)} ${pointing.unit}`,
  ];
  const { shaftFrequency } = pointing;
  if (shaftFrequency) parts.push(`${(frequency / shaftFrequency).toFixed(2)} × shaft speed`);
  const near = pointing.orders.filter(
    (order) => Math.abs(order.apparentFrequency - frequency) <= 1.5 * lines.step,
  );
  if (near.length > 0) parts.push(near.map(nameOrder).join('; '));
  return parts.join(' · ');
}

function nameOrder(order: OrderMark): string {
  const name = `order ${order.order}`;
  return order.folded ? `${name}, folded down from ${figureText(order.frequency)} Hz` : name;
}
