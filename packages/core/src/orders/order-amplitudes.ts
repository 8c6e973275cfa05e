import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { recordingSpectra } from '../spectrum/recording-spectra.js';
import { measureOrders } from './measure-orders.js';
import type { OrderAmplitudes, OrderInput } from './types.js';

/**
 * Amplitude of each order of a steady shaft speed, on each channel.
 *
 * A = √(2 (P(f) − N)) with P the averaged Hann-windowed power at f = order × speed / 2π (folded where it must), N the noise
 * floor there
 *
 * @param input - see {@link OrderInput}
 * @returns for each order its frequency, where it appears, and its amplitude with error on each channel
 * @throws RangeError for a speed, order, tolerance or false-alarm rate out of its domain
 * @remarks The speed is refined within the tolerance to where its family of orders is strongest, if any of them stands
 *   above the noise. For speeds steady within a line of the spectrum over the recording; the error comes from the
 *   noise around each order, not from a drifting speed (see {@link trackOrders}). Of a long recording 48 segments are read,
 *   spread evenly over it. An order beyond half the sampling rate is shown where it folds
 *   to, with `folded` set: what lies before the converter may have weakened it.
 * @example
 * ```ts
 * let state = 1;
 * const noise = () => (state = (16807 * state) % 2147483647) / 2147483647 - 0.5;
 * const samples = Float64Array.from({ length: 2000 }, (_, n) => 0.8 * Math.sin((2 * Math.PI * 24 * n) / 200) + 0.2 * noise());
 * const recording = { name: 'bench', sampleRate: 200, channels: [{ name: 'x', unit: 'm/s²', samples }],
 *   sampling: { gaps: [] } };
 * const { orders, speed } = orderAmplitudes({ recording, speed: 2 * Math.PI * 24.2, orders: [1, 2] });
 * orders[0].channels[0].amplitude // → 0.80
 * orders[1].channels[0].seen // → false
 * speed / (2 * Math.PI) // → 24.0 Hz
 * ```
 */
export function orderAmplitudes(input: OrderInput): OrderAmplitudes {
  const { recording, speed, orders, tolerance = 0.02, falseAlarmRate = 0.005 } = input;
  check(input, { tolerance, falseAlarmRate });
  const spectra = recordingSpectra(recording, { padding: 4, caller: 'orderAmplitudes' });
  return measureOrders({ recording, spectra, speed, orders, tolerance, falseAlarmRate });
}

function check({ speed, orders }: OrderInput, more: { tolerance: number; falseAlarmRate: number }): void {
  checkPositive('orderAmplitudes: speed', speed);
  orders.forEach((order, i) => {
    checkPositive(`orderAmplitudes: orders[${i}]`, order);
  });
  if (!(more.tolerance >= 0 && more.tolerance <= 0.2)) {
    throw refusal('orderAmplitudes: tolerance', 'from 0 to 0.2', more.tolerance);
  }
  if (!(more.falseAlarmRate > 0 && more.falseAlarmRate < 1)) {
    throw refusal('orderAmplitudes: falseAlarmRate', 'between 0 and 1', more.falseAlarmRate);
  }
}
