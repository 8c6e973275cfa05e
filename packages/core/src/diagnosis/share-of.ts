import type { Evidence } from './evidence.js';

/** An amplitude over the strongest line of its unit; lines of different units are not compared. */
export function shareOf({ strongest }: Pick<Evidence, 'strongest'>, amplitude: number, unit: string): number {
  return amplitude > 0 ? amplitude / Math.max(strongest.get(unit) ?? 0, amplitude) : 0;
}
