import type { Recording } from '../recording/types.js';
import type { LineSpectrum } from '../spectrum/line-spectrum.js';
import { foldedFrequency } from './folded-frequency.js';
import { isReachable } from './is-reachable.js';
import { readLine } from './read-line.js';
import { refineSpeed } from './refine-speed.js';
import type { OrderAmplitudes, OrderInput, OrderMeasurement } from './types.js';

export interface MeasureInput extends Required<OrderInput> {
  /** One for each channel. */
  readonly spectra: readonly LineSpectrum[];
}

/** Distance in lines at which the Hann window tells two sines apart. */
const MAIN_LOBE = 2;

/** What {@link orderAmplitudes} gives, from spectra that were made already. */
export function measureOrders(input: MeasureInput): OrderAmplitudes {
  const { recording, spectra, orders } = input;
  const refined = refineSpeed(spectra, { ...input, sampleRate: recording.sampleRate });
  const { speed, probability } = refined;
  const resolution = MAIN_LOBE * Math.max(0, ...spectra.map((spectrum) => spectrum.resolution));
  const places = orders.map((order) => placeOrder(order, { recording, speed }));
  const measured = orders.map((order, at): OrderMeasurement => {
    const place = places[at] ?? placeOrder(order, { recording, speed });
    return {
      order,
      ...place,
      reachable: spectra.every((spectrum) => isReachable(spectrum, place.apparentFrequency)),
      inseparableFrom: orders.filter((other, i) => {
        const apart = (places[i]?.apparentFrequency ?? NaN) - place.apparentFrequency;
        return other !== order && Math.abs(apart) < resolution;
      }),
      channels: spectra.map((spectrum, i) => {
        const { name = '', unit = 'm/s²' } = recording.channels[i] ?? {};
        return { channel: name, unit, ...readLine(spectrum, place.apparentFrequency, probability) };
      }),
    };
  });
  return { speed, speedFrom: refined.from, resolution, orders: measured };
}

function placeOrder(
  order: number,
  { recording: { sampleRate }, speed }: { recording: Recording; speed: number },
): { frequency: number; apparentFrequency: number; folded: boolean } {
  const frequency = (order * speed) / (2 * Math.PI);
  return {
    frequency,
    apparentFrequency: foldedFrequency(frequency, sampleRate),
    folded: frequency > sampleRate / 2,
  };
}
