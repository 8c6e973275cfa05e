import { refusal } from '../internal/refuse.js';
import { LINING_SYNONYMS, LININGS, type Lining } from './linings.js';
import { nearestName } from './nearest-name.js';

/**
 * The lining of the catalogue that has this name.
 *
 * @param name - a key of `LININGS` or another usual name of one; case, spaces and hyphens do not count
 * @returns its limits in Pa, m/s and Pa·m/s, where it has any, and where they come from
 * @throws RangeError where the catalogue has no such name; it lists those it has, and the nearest
 * @remarks Limits for lasting running under a steady load, low ends of the ranges that books give.
 * @example
 * findLining('sintered bronze').pressureSpeedLimit // → 1750000
 * findLining('ball bearing').kind // → 'rolling'
 * findLining('sinterd bronze') // → throws did you mean "sintered bronze"?
 * @see the sources stand beside the figures, in `linings.ts`
 */
export function findLining(name: string): Lining {
  const found = knownLining(name);
  if (found) return found;
  const near = nearestName(name, [...Object.keys(LININGS), ...Object.keys(LINING_SYNONYMS)]);
  const hint = near === undefined ? '' : ` (did you mean ${JSON.stringify(near)}?)`;
  const condition = `a lining of the catalogue: ${Object.keys(LININGS).join(', ')}${hint}`;
  throw refusal('findLining: name', condition, name);
}

/** The lining of this name, if the catalogue has it: what a line calls its linings is free text. */
export function knownLining(name: string): Lining | undefined {
  return BY_NAME.get(plain(name));
}

function plain(name: string): string {
  return name.toLowerCase().replace(/[\s-]+/g, '');
}

const BY_NAME: ReadonlyMap<string, Lining> = new Map([
  ...Object.values<Lining>(LININGS).map((lining): [string, Lining] => [plain(lining.name), lining]),
  ...Object.entries(LINING_SYNONYMS).map(([name, key]): [string, Lining] => [plain(name), LININGS[key]]),
]);
