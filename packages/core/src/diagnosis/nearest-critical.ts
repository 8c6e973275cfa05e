import type { ShaftLine } from '../line/types.js';
import { lineWhirl } from '../whirl/line-whirl.js';
import { MechanismError } from '../whirl/mechanism-error.js';
import type { Whirl } from '../whirl/types.js';

/** The predicted critical speed (rad/s) nearest to a speed, and the way the line whirls there. */
export interface NearestCritical {
  readonly speed: number;
  readonly whirl: Whirl;
}

/** The critical speed of one order nearest to a speed, or undefined where the line is not held. */
export function nearestCritical(
  line: ShaftLine,
  {
    speed,
    order,
    whirls,
  }: { readonly speed: number; readonly order: number; readonly whirls: readonly Whirl[] },
): NearestCritical | undefined {
  try {
    return lineWhirl(
      line,
      whirls.map((whirl) => ({ order, whirl, count: 3 })),
    )
      .flatMap(({ modes, whirl }) => modes.map((mode) => ({ speed: mode.speed, whirl })))
      .sort((a, b) => Math.abs(a.speed - speed) - Math.abs(b.speed - speed))[0];
  } catch (error) {
    // A line that is not held has no critical speed; what the recording says still stands.
    if (error instanceof MechanismError) return undefined;
    throw error;
  }
}
