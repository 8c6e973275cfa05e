import { checkPositive, checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { CriticalSpeedOptions } from './types.js';
import type { WhirlPencil } from './whirl-solver.js';

const MOST_MODES = 100;

/** The options of `criticalSpeeds` with their defaults; `where` reads `'function'` or `'function: argument.'`. */
export function checkExcitation(where: string, options: CriticalSpeedOptions): WhirlPencil {
  const { order = 1, whirl = 'forward', count = 4 } = options;
  checkPositive(`${where}order`, order);
  checkWhole(`${where}count`, count, [1, MOST_MODES]);
  const known: readonly string[] = ['forward', 'backward'];
  if (!known.includes(whirl)) throw refusal(`${where}whirl`, "'forward' or 'backward'", whirl);
  return { order, whirl, count };
}
