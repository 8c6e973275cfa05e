import type { ShaftLine } from '../line/types.js';
import { lineWhirl } from '../whirl/line-whirl.js';
import type { LineExcitation } from './excitations.js';
import type { LineCriticalSpeed } from './types.js';

/** Modes looked at for each excitation to begin with. */
export const FIRST_MODES = 4;

/** However many bushes: modes beyond this many are not looked for. */
const MOST_MODES = 64;

interface Task {
  readonly excitations: readonly LineExcitation[];
  /** Modes of each excitation. */
  readonly counts: readonly number[];
}

/** The critical speeds of a line for everything that drives it. */
export function lineCriticals(line: ShaftLine, { excitations, counts }: Task): LineCriticalSpeed[] {
  const driven = excitations.flatMap(({ excitation, order, whirls }, i) =>
    whirls.map((whirl) => ({ excitation, order, whirl, count: counts[i] ?? 1 })),
  );
  return lineWhirl(line, driven).flatMap(({ order, whirl, modes }, i) =>
    modes.map(({ speed, shape }, mode) => ({
      excitation: driven[i]?.excitation ?? 'unbalance',
      order,
      whirl,
      mode: mode + 1,
      speed,
      shape,
    })),
  );
}

/**
 * The critical speeds whose bands could matter up to a speed: with several bushes modes lie close, and as many are looked
 * for as it takes until the band of the last begins above it.
 *
 * @param cover - rad/s
 */
export function criticalsCovering(
  line: ShaftLine,
  { excitations, cover }: { readonly excitations: readonly LineExcitation[]; readonly cover: number },
): LineCriticalSpeed[] {
  let counts = excitations.map(() => FIRST_MODES);
  for (;;) {
    const found = lineCriticals(line, { excitations, counts });
    const more = counts.map((count, i) =>
      fallsShort(found, { count, cover, source: excitations[i] }) ? 2 * count : count,
    );
    if (more.every((count, i) => count === counts[i])) return found;
    counts = more;
  }
}

interface Cover {
  readonly count: number;
  readonly cover: number;
  readonly source: LineExcitation | undefined;
}

/** Half a margin more than the band itself: that far a band is near. */
function fallsShort(found: readonly LineCriticalSpeed[], { count, cover, source }: Cover): boolean {
  if (!source || count >= MOST_MODES) return false;
  return source.whirls.some((whirl) => {
    const own = found.filter((one) => one.excitation === source.excitation && one.whirl === whirl);
    const last = own.at(-1);
    return own.length === count && last !== undefined && last.speed * (1 - 1.5 * source.margin) < cover;
  });
}
