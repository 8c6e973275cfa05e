import { measureOrders } from '../orders/measure-orders.js';
import type { OrderAmplitudes, OrderMeasurement, OrderOnChannel } from '../orders/types.js';
import { peaksOf } from '../spectrum/peaks-of.js';
import type { Recording } from '../recording/types.js';
import { recordingSpectra } from '../spectrum/recording-spectra.js';
import type { LineSpectrum } from '../spectrum/line-spectrum.js';
import type { Evidence, NoiseLevel } from './evidence.js';
import { turnModulation } from './turn-modulation.js';
import type { ChannelPeak, DiagnosisInput, OrderReading } from './types.js';

/** Recordings of noise alone in which anything may be seen: a third for the orders, a third for the peaks, a third to spare. */
const FALSE_ALARM_RATE = 0.004;
/** Share by which the speed that was given may be wrong. */
const SPEED_TOLERANCE = 0.02;
const BASE_ORDERS: readonly number[] = [0.5, 1, 1.5, 2, 3, 4, 5, 6];
/** Multiples of shaft speed up to here are taken for the shaft's own: slots, poles, teeth. */
const HIGHEST_MULTIPLE = 40;

/** Measures the orders and the peaks of a recording, and sets apart the peaks that no order explains. */
export function gatherEvidence({ recording, speed, line, axial }: DiagnosisInput): Evidence {
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
  const strongest = strongestOf(measured, strangers);
  return {
    recording,
    line,
    axial,
    speed: measured.speed,
    measured,
    readings,
    peaks,
    strangers,
    strongest,
    noise: noiseLevel(recording, spectra, strongest),
    modulation: turnModulation(recording, measured.speed),
  };
}

function strongestOf(
  { orders }: OrderAmplitudes,
  strangers: readonly ChannelPeak[],
): ReadonlyMap<string, number> {
  const strongest = new Map<string, number>();
  const raise = (unit: string, amplitude: number): void => {
    strongest.set(unit, Math.max(strongest.get(unit) ?? 0, amplitude));
  };
  for (const { channels } of orders) {
    const squares = new Map<string, number>();
    for (const { unit, seen, amplitude } of channels) {
      if (seen) squares.set(unit, (squares.get(unit) ?? 0) + amplitude ** 2);
    }
    squares.forEach((square, unit) => {
      raise(unit, Math.sqrt(square));
    });
  }
  for (const { unit, amplitude } of strangers) raise(unit, amplitude);
  return strongest;
}

/** The noise of a Hann spectrum: its floor summed over the lines, less what each line takes of its neighbours (1.5). */
function noiseLevel(
  { channels }: Recording,
  spectra: readonly LineSpectrum[],
  strongest: ReadonlyMap<string, number>,
): NoiseLevel {
  const levels = channels.map(({ unit }, i): NoiseLevel => {
    const rms = Math.sqrt((spectra[i]?.floor ?? new Float64Array()).reduce((sum, p) => sum + p, 0) / 1.5);
    const line = strongest.get(unit) ?? 0;
    return { rms, unit, share: line > 0 ? rms / line : 0 };
  });
  return levels.sort((a, b) => b.share - a.share)[0] ?? { rms: 0, unit: 'm/s²', share: 0 };
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

/**
 * Whether neither a whole order that was measured nor any whole multiple of shaft speed falls on the peak. Half orders do not
 * count: where they are the shaft's, the row of whole orders shows as well, and the weighing takes that for looseness.
 */
function isStranger({ frequency }: ChannelPeak, measured: OrderAmplitudes): boolean {
  const shaft = measured.speed / (2 * Math.PI);
  // One line of the spectrum, and what a speed that wanders by 0.6 % moves.
  const reach = measured.resolution / 2 + 0.006 * frequency;
  const near = (place: number): boolean => Math.abs(frequency - place) < reach;
  // A folded order wanders as far as its true frequency does.
  const owned = measured.orders.some(
    (order) =>
      Number.isInteger(order.order) &&
      Math.abs(frequency - order.apparentFrequency) <
        measured.resolution / 2 + 0.006 * Math.max(frequency, order.frequency),
  );
  if (owned) return false;
  const multiple = Math.round(frequency / shaft);
  const tellable = reach < 0.2 * shaft;
  if (tellable && multiple >= 1 && multiple <= HIGHEST_MULTIPLE && near(multiple * shaft)) return false;
  return true;
}

/** The strongest channel's peak of each frequency, with the amplitude of all channels of its unit together. */
function onePerFrequency(peaks: readonly ChannelPeak[]): ChannelPeak[] {
  const kept: ChannelPeak[] = [];
  for (const peak of [...peaks].sort((a, b) => b.amplitude - a.amplitude)) {
    const at = kept.findIndex(
      ({ frequency, unit }) =>
        unit === peak.unit && Math.abs(frequency - peak.frequency) < 0.01 * peak.frequency,
    );
    const same = kept[at];
    if (same === undefined) kept.push(peak);
    else kept[at] = { ...same, amplitude: Math.hypot(same.amplitude, peak.amplitude) };
  }
  return kept.sort((a, b) => b.amplitude - a.amplitude);
}
