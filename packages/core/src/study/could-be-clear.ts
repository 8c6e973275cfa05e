import type { ShaftLine } from '../line/types.js';
import { torsionalCriticals } from '../twist/torsional-criticals.js';
import { avoidBands } from './avoid-bands.js';
import { bandReasons } from './band-reasons.js';
import { lineExcitations } from './excitations.js';
import { lineCriticals } from './line-criticals.js';
import { verdictOf } from './reasons.js';
import { speedLimit } from './speed-limit.js';
import { twistBands } from './twist-bands.js';
import type { AvoidBand, Margins } from './types.js';

export interface ScreenTask {
  readonly speed: number;
  readonly margins: Margins;
  /** N·m at the speed; undefined where it is not known. */
  readonly torque: number | undefined;
}

/** Modes of whirl looked at: what `assess` looks at beyond them can only add bands. */
const MODES = 2;
/** Bands of twist are looked for as far as those that could be near. */
const REACH = 1.5;

/**
 * Whether the bands leave it open that a line is clear at a speed. A quick look before `assess`: it sees fewer bands, so
 * that its no is sure, and its yes is not.
 */
export function couldBeClear(line: ShaftLine, task: ScreenTask): boolean {
  const { speed, margins } = task;
  if (!clearOf(bandsOfTwist(line, task), speed)) return false;
  const excitations = lineExcitations(line, margins);
  const criticals = lineCriticals(line, { excitations, counts: excitations.map(() => MODES) });
  return clearOf(avoidBands(criticals, excitations), speed);
}

function bandsOfTwist(line: ShaftLine, { speed, margins, torque: known }: ScreenTask): AvoidBand[] {
  if (known === undefined) return [];
  const torque = (other: number): number => known * (other / speed) ** 2;
  return twistBands({
    line,
    criticals: torsionalCriticals(line),
    torque,
    margin: margins.twist,
    reach: REACH * speed,
  });
}

function clearOf(bands: readonly AvoidBand[], speed: number): boolean {
  return verdictOf(bandReasons({ speed, bands, limit: speedLimit(bands) })) === 'clear';
}
