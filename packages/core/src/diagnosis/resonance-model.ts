import type { ShaftLine } from '../line/types.js';
import type { CriticalSpeedOptions } from '../whirl/types.js';
import { lineWhirl } from '../whirl/line-whirl.js';
import type { MeasuredResonance } from './calibration-types.js';

/** An order so high that the shaft all but stands still where it meets a mode. */
const AT_REST = 1e7;

/** Modes that the model gives for each resonance, ascending, in the unit of what was measured: Hz or rad/s. */
export function modelledModes(
  line: ShaftLine,
  resonances: readonly MeasuredResonance[],
  count: number,
): number[][] {
  const wanted = [...new Map(resonances.map((one) => [keyOf(one), one])).values()];
  const modes = new Map<string, number[]>();
  for (const medium of ['air', 'water'] as const) {
    const own = wanted.filter((one) => mediumOf(one) === medium);
    if (own.length === 0) continue;
    const found = lineWhirl(
      medium === 'air' ? inAir(line) : line,
      own.map((one) => ({ ...excitationOf(one), count })),
    );
    own.forEach((one, i) => {
      const scale = one.frequency === undefined ? 1 : AT_REST / (2 * Math.PI);
      modes.set(keyOf(one), found[i]?.modes.map(({ speed }) => speed * scale) ?? []);
    });
  }
  return resonances.map((one) => modes.get(keyOf(one)) ?? []);
}

/** Resonances of one key share their modes, and no two of them are the same mode. */
export function keyOf(resonance: MeasuredResonance): string {
  const { order, whirl } = excitationOf(resonance);
  return `${mediumOf(resonance)} ${order} ${whirl}`;
}

function mediumOf({ medium = 'water' }: MeasuredResonance): 'air' | 'water' {
  return medium;
}

function excitationOf(resonance: MeasuredResonance): Required<Omit<CriticalSpeedOptions, 'count'>> {
  if (resonance.frequency !== undefined) return { order: AT_REST, whirl: 'forward' };
  return { order: resonance.order ?? 1, whirl: resonance.whirl ?? 'forward' };
}

function inAir(line: ShaftLine): ShaftLine {
  if (line.propeller === undefined) return line;
  return { ...line, propeller: { ...line.propeller, wetMassFactor: 1, wetInertiaFactor: 1 } };
}
