import type { ShaftLine } from '../line/types.js';
import { lineWhirl } from '../whirl/line-whirl.js';
import { MechanismError } from '../whirl/mechanism-error.js';

/** The predicted critical speed (rad/s) of order 1 nearest to a speed, or undefined where the line is not held. */
export function nearestCritical(line: ShaftLine, speed: number): number | undefined {
  try {
    const speeds = lineWhirl(line, [{ order: 1, whirl: 'forward', count: 3 }]).flatMap(({ modes }) =>
      modes.map((mode) => mode.speed),
    );
    return speeds.sort((a, b) => Math.abs(a - speed) - Math.abs(b - speed))[0];
  } catch (error) {
    // A line that is not held has no critical speed; what the recording says still stands.
    if (error instanceof MechanismError) return undefined;
    throw error;
  }
}
