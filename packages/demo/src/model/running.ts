import { runningPoint, throttleFor, type RunningPoint, type ShaftLine } from '@sternline/core';

/** A part that the running speed needs and a line may lack. */
export type DrivePart = 'motor' | 'supply' | 'propeller';

/** How a line runs: at full throttle and at the wanted speed. */
export type Running =
  | {
      readonly kind: 'runs';
      readonly full: RunningPoint;
      /** Absent where full throttle does not reach the wanted speed. */
      readonly wanted?: RunningPoint;
    }
  | { readonly kind: 'missing'; readonly missing: readonly DrivePart[] }
  | { readonly kind: 'problem'; readonly sentence: string };

const PARTS: readonly DrivePart[] = ['motor', 'supply', 'propeller'];

/**
 * Motor, battery and propeller in balance, at full throttle and at the wanted speed.
 *
 * @param line - a checked line
 * @param speed - rad/s, wanted
 */
export function runningOf(line: ShaftLine, speed: number): Running {
  const missing = PARTS.filter((part) => line[part] === undefined);
  if (missing.length > 0) return { kind: 'missing', missing };
  try {
    const full = runningPoint(line);
    const throttle = throttleFor(line, { speed });
    return {
      kind: 'runs',
      full,
      ...(throttle === undefined ? {} : { wanted: runningPoint(line, { throttle }) }),
    };
  } catch (error) {
    return { kind: 'problem', sentence: outsideSeries(error) };
  }
}

/**
 * The throttle at which the loaded shaft reaches a speed.
 *
 * @param line - a checked line
 * @param speed - rad/s
 * @returns a share of the supply's voltage; undefined beyond full throttle, or where the line does not tell
 */
export function throttleAt(line: ShaftLine, speed: number): number | undefined {
  if (PARTS.some((part) => line[part] === undefined)) return undefined;
  try {
    return throttleFor(line, { speed });
  } catch {
    return undefined;
  }
}

/** The line with a motor, a battery or a propeller of a usual size, to be made the reader's own. */
export function withDrivePart(line: ShaftLine, part: DrivePart): ShaftLine {
  const { shafts } = line;
  const last = shafts.at(-1);
  const bare = part === 'propeller' && last?.discs.length === 0;
  const own = bare
    ? [...shafts.slice(0, -1), { ...last, discs: [{ ...USUAL_DISC, at: last.length }] }]
    : shafts;
  return { ...line, shafts: own, [part]: USUAL[part] };
}

const RPM = Math.PI / 30;

/** Common sizes of a boat of a metre; no source. */
const USUAL = {
  motor: { speedConstant: 500 * RPM, resistance: 0.1, noLoadCurrent: 1, rotorInertia: 1e-5 },
  supply: { voltage: 11.1, resistance: 0.03 },
  propeller: { blades: 3, diameter: 0.04, pitch: 0.04 },
} as const;

/** The mass of such a propeller, brass; its inertia as that of a third of its radius. No source. */
const USUAL_DISC = { name: 'propeller', mass: 0.02, polarInertia: 9e-7, diametralInertia: 5e-7 } as const;

function outsideSeries(error: unknown): string {
  const told = error instanceof Error ? error.message : String(error);
  return `The running speed could not be worked out: the propeller lies outside the series that its torque is taken from (${told.replace(/^\w+: /, '')}). Check its blades, diameter and pitch.`;
}
