import { jointAngles } from '../line/joint-angles.js';
import type { ShaftLine } from '../line/types.js';
import type { Whirl } from '../whirl/types.js';
import type { Excitation, Margins } from './types.js';

/** What can drive a whirl mode of a line, how often in a turn, and which way round. */
export interface LineExcitation {
  readonly excitation: Excitation;
  readonly order: number;
  readonly whirls: readonly Whirl[];
  readonly margin: number;
}

/**
 * Common practice, no source: 25 % about the first whirl (working speed at most 0.65 to 0.75 of the first critical), 15 %
 * about joint-driven and blade-order criticals (published advice for cardan shafts asks for 8 % about half the critical); 10 % about torsional
 * resonances, which small lines damp little.
 */
export const DEFAULT_MARGINS: Margins = { whirl: 0.25, joints: 0.15, blades: 0.15, twist: 0.1 };

/** Below this a joint's couple, T tan β, is under 1 % of the torque and is left out. Our choice, no source. */
const STRAIGHT = 0.01;

/**
 * The excitations of a line. Unbalance turns with the shaft and drives forward whirl alone; the couples of a universal
 * joint and the wake's push on the blades stand still in the hull and drive both.
 */
export function lineExcitations(line: ShaftLine, margins: Margins): LineExcitation[] {
  const found: LineExcitation[] = [
    { excitation: 'unbalance', order: 1, whirls: ['forward'], margin: margins.whirl },
  ];
  const angles = jointAngles(line);
  const bent = line.joints.some((joint, i) => joint.kind === 'universal' && (angles[i] ?? 0) > STRAIGHT);
  if (bent) {
    found.push({ excitation: 'joints', order: 2, whirls: ['backward', 'forward'], margin: margins.joints });
  }
  if (line.propeller) {
    const order = line.propeller.blades;
    found.push({ excitation: 'blades', order, whirls: ['backward', 'forward'], margin: margins.blades });
  }
  return found;
}
