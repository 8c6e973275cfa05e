import { numberText } from '../internal/number-text.js';
import type { ComparisonRow, Withheld } from './compare-types.js';

const WHY: Readonly<Record<Withheld, string>> = {
  'too-short': 'a recording is too short to say',
  speed: 'the two speeds differ too much to compare',
  mount: 'the phone lay differently',
  gain: 'a change of gain would explain it',
  clipping: 'samples were cut off',
  folded: 'it lies beyond half the sampling rate',
  hidden: 'it lies where gravity and drift hide it',
  shared: 'another order falls on the same place',
  'not-seen': 'it stands above the noise in neither',
};

/** A row in words. */
export function describeChange(row: Omit<ComparisonRow, 'sentence'>): string {
  const { order, verdict, withheld, ratio, interval } = row;
  if (withheld !== undefined) return `Order ${order}: no difference shown, because ${WHY[withheld]}.`;
  const reach = `${percent(interval[0])} to ${percent(interval[1])}`;
  if (verdict === 'no difference shown') {
    return `Order ${order}: no difference shown; it stands at ${reach} of what it was.`;
  }
  const way = verdict === 'lower' ? 'fell' : 'rose';
  if (!Number.isFinite(ratio)) return `Order ${order} rose out of the noise.`;
  return `Order ${order} ${way} to ${percent(ratio)} of what it was (${reach}).`;
}

/** To a whole per cent, below ten per cent to one digit. */
function percent(ratio: number): string {
  if (!Number.isFinite(ratio)) return 'any multiple';
  const value = 100 * ratio;
  return `${value < 10 ? numberText(value, 1) : numberText(value, 1 + Math.floor(Math.log10(value)))} %`;
}
