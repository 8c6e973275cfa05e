import { measureOrders } from '../orders/measure-orders.js';
import type { OrderAmplitudes, OrderMeasurement, OrderOnChannel } from '../orders/types.js';
import { peaksOf } from '../spectrum/peaks-of.js';
import { recordingSpectra } from '../spectrum/recording-spectra.js';
import type { Evidence } from './evidence.js';
import type { ChannelPeak, DiagnosisInput, OrderReading } from './types.js';

/** Recordings of noise alone in which anything may be seen: a third for the orders, a third for the peaks, a third to spare. */
const FALSE_ALARM_RATE = 0.004;
/** Share by which the speed that was given may be wrong. */
const SPEED_TOLERANCE = 0.02;
const BASE_ORDERS: readonly number[] = [0.5, 1, 1.5, 2, 3, 4, 5, 6];
/** Multiples of shaft speed up to here are taken for the shaft's own: slots, poles, teeth. */
const HIGHEST_MULTIPLE = 40;

/** Measures the orders and the peaks of a recording, and sets apart the peaks that no order explains. */
export function gatherEvidence({ recording, speed, line }: DiagnosisInput): Evidence {
  const blades = line?.propeller?.blades;
  const poles = line?.motor?.poles;
  const extra = [blades, blades && 2 * blades, poles && poles / 2, poles, poles && 3 * poles];
  const orders = [...new Set([...BASE_ORDERS, ...extra.filter((order) => order !== undefined)])].sort(
    (a, b) => a - b,
  );
  const spectra = recordingSpectra(recording, { padding: 4, caller: 'diagnose' });
  const measured = measureOrders({
    recording,
    spectra,
    speed,
    orders,
    tolerance: SPEED_TOLERANCE,
    falseAlarmRate: FALSE_ALARM_RATE,
  });
  const readings = measured.orders.map(readOrder);
  const falseAlarmRate = FALSE_ALARM_RATE / recording.channels.length;
  const peaks = recording.channels.flatMap(({ name, unit }, i) => {
    const spectrum = spectra[i];
    const found = spectrum === undefined ? [] : peaksOf(spectrum, { falseAlarmRate });
    return found.map((peak): ChannelPeak => ({ ...peak, channel: name, unit }));
  });
  const strangers = onePerFrequency(peaks.filter((peak) => isStranger(peak, measured)));
  return {
    recording,
    line,
    speed: measured.speed,
    measured,
    readings,
    peaks,
    strangers,
    strongest: Math.max(
      0,
      ...readings.map(({ seen, amplitude }) => (seen ? amplitude : 0)),
      ...strangers.map(({ amplitude }) => amplitude),
    ),
  };
}

/** The channel that shows the order most: highest above its own noise. */
function readOrder({ channels, ...place }: OrderMeasurement): OrderReading {
  const height = ({ amplitude, floor, seen }: OrderOnChannel): number =>
    (seen ? 1e6 : 0) + (floor > 0 ? amplitude / floor : 0);
  const [best] = [...channels].sort((a, b) => height(b) - height(a));
  const { order, frequency, apparentFrequency, folded, inseparableFrom } = place;
  return {
    order,
    frequency,
    apparentFrequency,
    folded,
    amplitude: best?.amplitude ?? 0,
    amplitudeError: best?.amplitudeError ?? 0,
    unit: best?.unit ?? '',
    channel: best?.channel ?? '',
    seen: best?.seen ?? false,
    inseparableFrom,
  };
}

/** Whether neither an order that was measured nor any whole multiple of shaft speed falls on the peak. */
function isStranger({ frequency }: ChannelPeak, measured: OrderAmplitudes): boolean {
  const shaft = measured.speed / (2 * Math.PI);
  // One line of the spectrum, and what a speed that wanders by 0.6 % moves.
  const reach = measured.resolution / 2 + 0.006 * frequency;
  const near = (place: number): boolean => Math.abs(frequency - place) < reach;
  if (measured.orders.some(({ apparentFrequency }) => near(apparentFrequency))) return false;
  const multiple = Math.round(frequency / shaft);
  const tellable = reach < 0.2 * shaft;
  if (tellable && multiple >= 1 && multiple <= HIGHEST_MULTIPLE && near(multiple * shaft)) return false;
  return true;
}

function onePerFrequency(peaks: readonly ChannelPeak[]): ChannelPeak[] {
  const kept: ChannelPeak[] = [];
  for (const peak of [...peaks].sort((a, b) => b.amplitude - a.amplitude)) {
    const same = (other: ChannelPeak): boolean =>
      Math.abs(other.frequency - peak.frequency) < 0.01 * peak.frequency;
    if (!kept.some(same)) kept.push(peak);
  }
  return kept;
}
