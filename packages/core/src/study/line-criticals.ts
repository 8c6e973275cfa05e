import type { ShaftLine } from '../line/types.js';
import { lineWhirl } from '../whirl/line-whirl.js';
import type { LineExcitation } from './excitations.js';
import type { LineCriticalSpeed } from './types.js';

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
