import { checkPositive } from '../internal/checks.js';
import { listText } from '../internal/list-text.js';
import { numberText } from '../internal/number-text.js';
import { foldedFrequency } from './folded-frequency.js';

export interface ReachInput {
  /** Hz */
  readonly sampleRate: number;
  /** rad/s, shaft speed. */
  readonly speed: number;
  readonly orders: readonly number[];
  /** Hz, distance at which two lines are told apart. Default 0.5, which takes about 4 s of recording. */
  readonly resolution?: number;
}

/**
 * What a sampling rate can and cannot show of the orders of a shaft speed, in sentences.
 *
 * @param input - rate, speed, orders, and the resolution
 * @returns sentences, the hardest limits first; one that says all is well where it is
 * @throws RangeError for a rate, speed, order or resolution that is not greater than 0
 * @example
 * ```ts
 * const sentences = describeReach({ sampleRate: 100, speed: 4000 * Math.PI / 30, orders: [1, 2] });
 * sentences[0] // → 'At 100 Hz and 4\u202f000 rpm orders 1 and 2 both appear at 33.3 Hz: this recording cannot tell them apart.'
 * ```
 */
export function describeReach({ sampleRate, speed, orders, resolution = 0.5 }: ReachInput): string[] {
  checkPositive('describeReach: sampleRate', sampleRate);
  checkPositive('describeReach: speed', speed);
  checkPositive('describeReach: resolution', resolution);
  orders.forEach((order, i) => {
    checkPositive(`describeReach: orders[${i}]`, order);
  });
  const places = orders.map((order): Place => {
    const frequency = (order * speed) / (2 * Math.PI);
    return { order, frequency, apparent: foldedFrequency(frequency, sampleRate) };
  });
  const conditions = `At ${numberText(sampleRate)} Hz and ${numberText((speed * 30) / Math.PI, 4)} rpm`;
  const half = sampleRate / 2;
  const sentences = [
    ...together(places, resolution).map(
      (group) =>
        `${conditions} orders ${listText(group.map(({ order }) => order))} ${group.length === 2 ? 'both' : 'all'} appear at ${numberText(group[0]?.apparent ?? 0)} Hz: this recording cannot tell them apart.`,
    ),
    ...places.filter((place) => place.apparent < resolution).map(hidden),
    ...places
      .filter((place) => place.frequency > half && place.apparent >= resolution)
      .map((place) => foldedSentence(place, half)),
  ];
  if (sentences.length > 0 || orders.length === 0) return sentences;
  return [
    `${conditions} ${orders.length === 1 ? 'order' : 'orders'} ${listText(orders)} can be seen where they are.`,
  ];
}

interface Place {
  readonly order: number;
  readonly frequency: number;
  readonly apparent: number;
}

/** Orders that share an apparent frequency, each group once. */
function together(places: readonly Place[], resolution: number): Place[][] {
  const sorted = [...places].sort((a, b) => a.apparent - b.apparent);
  const groups: Place[][] = [];
  let group: Place[] = [];
  for (const place of sorted) {
    const before = group.at(-1);
    if (before !== undefined && place.apparent - before.apparent >= resolution) {
      groups.push(group);
      group = [];
    }
    group.push(place);
  }
  groups.push(group);
  return groups.filter(({ length }) => length > 1).map((found) => found.sort((a, b) => a.order - b.order));
}

function hidden({ order, frequency }: Place): string {
  return `Order ${order} (${numberText(frequency)} Hz) appears at or beside 0 Hz, where gravity and drift hide it.`;
}

function foldedSentence({ order, frequency, apparent }: Place, half: number): string {
  return `Order ${order} (${numberText(frequency)} Hz) lies above half the sampling rate (${numberText(half)} Hz): it folds back to ${numberText(apparent)} Hz, and its amplitude there may be far too small.`;
}
