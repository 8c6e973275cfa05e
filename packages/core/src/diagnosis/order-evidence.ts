import { listText } from '../internal/list-text.js';
import { numberText } from '../internal/number-text.js';
import { amplitudeText } from './amplitude-text.js';
import { mainsLine } from './mains-line.js';
import { shareOf } from './share-of.js';
import type { Evidence, OrderEvidence } from './evidence.js';

/** What the recording says of one order, or undefined where it was not measured. */
export function orderEvidence(evidence: Evidence, order: number): OrderEvidence | undefined {
  const measurement = evidence.measured.orders.find((other) => other.order === order);
  const reading = evidence.readings.find((other) => other.order === order);
  if (measurement === undefined || reading === undefined) return undefined;
  const { inseparableFrom } = measurement;
  const likely = inseparableFrom.filter(
    // A half order where a whole one folds to is that one, as a rule.
    (other) => isLikely(evidence, other) || (!Number.isInteger(order) && Number.isInteger(other)),
  );
  const amplitude = combinedAmplitude(evidence, order);
  return {
    measurement,
    reading,
    amplitude,
    share: shareOf(evidence, amplitude, reading.unit),
    clear: reading.seen && likely.length === 0,
    sentences: [figure(evidence, order), ...cautions(evidence, order)],
  };
}

/** Orders that machines of this kind show as a rule, so that sharing a place with one leaves the cause open. */
function isLikely({ line }: Evidence, order: number): boolean {
  return order === 1 || order === 2 || order === line?.propeller?.blades;
}

/** The mains frequency (Hz), if any, that shows at the same place. */
function onMains({ readings, measured, recording }: Evidence, order: number): number | undefined {
  const place = readings.find((reading) => reading.order === order)?.apparentFrequency ?? NaN;
  return mainsLine(place, { sampleRate: recording.sampleRate, resolution: measured.resolution });
}

function combinedAmplitude({ measured, readings }: Evidence, order: number): number {
  const unit = readings.find((reading) => reading.order === order)?.unit;
  const channels = measured.orders.find((other) => other.order === order)?.channels ?? [];
  return Math.sqrt(
    channels.reduce((sum, c) => sum + (c.seen && c.unit === unit ? c.amplitude * c.amplitude : 0), 0),
  );
}

function figure({ readings }: Evidence, order: number): string {
  const reading = readings.find((other) => other.order === order);
  if (reading === undefined) return '';
  const { apparentFrequency, amplitude, amplitudeError, unit, channel } = reading;
  const size = `${amplitudeText(amplitude, unit)} (± ${numberText(amplitudeError, 1)}) on ${channel}`;
  return `Order ${order} at ${numberText(apparentFrequency)} Hz stands at ${size}.`;
}

function cautions(evidence: Evidence, order: number): string[] {
  const { measured, recording } = evidence;
  const measurement = measured.orders.find((other) => other.order === order);
  if (measurement === undefined) return [];
  const { folded, frequency, apparentFrequency, inseparableFrom } = measurement;
  const sentences: string[] = [];
  if (folded) {
    const half = numberText(recording.sampleRate / 2);
    sentences.push(
      `Its true ${numberText(frequency)} Hz lies above half the sampling rate (${half} Hz), so it shows folded and its size is not to be relied on.`,
    );
  }
  if (inseparableFrom.length > 0) {
    const others = `${inseparableFrom.length === 1 ? 'order' : 'orders'} ${listText(inseparableFrom)}`;
    sentences.push(`At ${numberText(apparentFrequency)} Hz it cannot be told from ${others}.`);
  }
  const mains = onMains(evidence, order);
  if (mains !== undefined) sentences.push(`Hum of the mains at ${mains} Hz would show at the same place.`);
  return sentences;
}
