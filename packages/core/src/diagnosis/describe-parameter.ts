import { numberText } from '../internal/number-text.js';
import type { ShaftLine } from '../line/types.js';
import type { CalibratedParameter } from './calibration-types.js';

/** One parameter in words: where it stands, how far it moved, and what says so. */
export function describeParameter(
  { kind, supports, moved, interval, dataShare }: Omit<CalibratedParameter, 'sentence'>,
  { shafts }: ShaftLine,
): string {
  const names = [...new Set(supports.map(({ shaft }) => shafts[shaft]?.name ?? ''))].join(', ');
  const what = kind === 'radial' ? 'Radial stiffness' : 'End fixity';
  const [first] = supports;
  const unit = kind === 'radial' ? 'N/m' : 'N·m/rad';
  const [median, value] = [first?.median ?? 0, first?.value ?? 0];
  const range = `${numberText(interval[0] * median, 2)} to ${numberText(interval[1] * median, 2)}`;
  const way = moved < 0 ? 'below' : 'above';
  return `${what} of the bushes of ${names}: ${numberText(value, 2)} ${unit} (${range}), ${numberText(Math.abs(moved), 2)} standard deviations ${way} what was assumed; ${numberText(100 * dataShare, 2)} % of this comes from the measurement.`;
}
