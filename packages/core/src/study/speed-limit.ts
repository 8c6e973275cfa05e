import { firstWhirl } from './band-reasons.js';
import { figure, makeStatement } from './statement.js';
import type { AvoidBand, SpeedLimit } from './types.js';

/** Where the lowest band of the first order begins; bands below it are to be passed, not dwelt in. */
export function speedLimit(bands: readonly AvoidBand[]): SpeedLimit {
  const first = firstWhirl(bands);
  if (!first) {
    return {
      speed: Infinity,
      ...makeStatement('No whirl of the first order was found: whirl sets no limit.', {}),
    };
  }
  const below = bands.filter((band) => band.from < first.from).length;
  const some = below === 1 ? 'one band is' : `${below} bands are`;
  const more = below === 0 ? '' : ` Below that, ${some} to be passed quickly.`;
  const template = `Stay below {limit}: {margin} under the first whirl at {critical}.${more}`;
  const figures = {
    limit: figure('speed', first.from),
    margin: figure('share', first.margin),
    critical: figure('speed', Math.min(...first.criticalSpeeds)),
  };
  return { speed: first.from, ...makeStatement(template, figures) };
}
