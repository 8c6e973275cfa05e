import { checkNotNegative, checkPositive } from '../internal/checks.js';
import type { SealSpeed } from './types.js';

/** Kinds of seal by the fastest surface that they bear, m/s. */
const SEALS: readonly Omit<SealSpeed, 'within'>[] = [
  {
    name: 'O-ring on the shaft',
    limit: 0.5,
    source: 'makers’ guides for nitrile O-rings on turning shafts; from memory',
  },
  { name: 'felt ring', limit: 4, source: 'makers’ guides for felt rings; from memory' },
  {
    name: 'lip seal, greased',
    limit: 6,
    source: 'half of the oiled one, for want of cooling; common practice',
  },
  { name: 'lip seal, oiled', limit: 12, source: 'DIN 3760 for nitrile lips without pressure; from memory' },
];

/**
 * The speed at which the shaft's surface rubs on a seal, against what kinds of seal bear.
 *
 * v = Ω d / 2
 *
 * @param shaft - `diameter` in m, `speed` in rad/s
 * @returns each kind with its limit in m/s and whether the speed is within it, least first
 * @throws RangeError where a figure is out of its domain
 * @remarks A tube filled with grease and no ring has no such limit; it flings its grease out instead.
 * @example
 * sealSpeeds({ diameter: 0.005, speed: 345 }).filter(({ within }) => within).map(({ name }) => name) // → ['felt ring', 'lip seal, greased', 'lip seal, oiled']
 * @see the sources stand beside the figures
 */
export function sealSpeeds({
  diameter,
  speed,
}: {
  readonly diameter: number;
  readonly speed: number;
}): SealSpeed[] {
  checkPositive('sealSpeeds: diameter', diameter);
  checkNotNegative('sealSpeeds: speed', speed);
  const rubbing = (speed * diameter) / 2;
  return SEALS.map((seal) => ({ ...seal, within: rubbing <= seal.limit }));
}
