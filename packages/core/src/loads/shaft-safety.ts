import { checkNotNegative, checkPositive } from '../internal/checks.js';
import type { Shaft } from '../line/types.js';
import { shaftStress } from '../twist/shaft-stress.js';
import { fatigueStrength } from './fatigue-strength.js';
import type { FatigueSafety } from './types.js';

export interface ShaftLoading {
  /** N·m of bending that alternates as the shaft turns. */
  readonly alternatingBending: number;
  /** N·m of bending that turns with the shaft. Default 0. */
  readonly steadyBending?: number;
  /** N·m, mean. */
  readonly torque: number;
  /** N·m, amplitude about the mean. Default 0. */
  readonly torqueSwing?: number;
  /** How a flat, thread or screw's mark raises bending stress under fatigue. Default 2.14. */
  readonly bendingNotch?: number;
  /** The same for shear. Default 3. */
  readonly torsionNotch?: number;
  /** Pa; that of the material's name if absent. */
  readonly tensileStrength?: number;
}

/** An end-milled keyseat, r/d 0.02: Shigley, table 7-1, first estimates of K_t and K_ts. From memory; taken whole, q = 1. */
const BENDING_NOTCH = 2.14;
const TORSION_NOTCH = 3;
/** k_a = a S_ut^b, S_ut in MPa, machined or cold drawn: Shigley, table 6-2 (4.51, −0.265). */
const SURFACE = [4.51, -0.265] as const;
/** k_b = 1.24 d^−0.107, d in mm, from 2.79 mm up: Shigley, eq. 6-20; held at its value there below. */
const SIZE = [1.24, -0.107, 2.79] as const;
/** 99 % reliability: Shigley, table 6-5. */
const RELIABILITY = 0.814;
/** Pa, beyond which endurance no longer follows the tensile strength of steels: Shigley, eq. 6-8. */
const HIGHEST_ENDURANCE = 700e6;

/**
 * Safety of a turning shaft against fatigue, by distortion energy and Goodman's line, and against yield.
 *
 * 1/n = √(σ_a² + 3τ_a²)/S_e + √(σ_m² + 3τ_m²)/S_ut, each stress with its notch; S_e = k_a k_b k_e S_e′
 *
 * @param shaft - its diameters in m and its material
 * @param loading - bending and torque in N·m, each in two parts; notch factors, default those of an end-milled
 *   keyseat, 2.14 in bending and 3 in shear; `tensileStrength` in Pa
 * @returns both factors, and the endurance limit they were worked out with
 * @throws RangeError where a load is negative or not finite, or a notch or strength is not greater than 0
 * @remarks For long running in air. Water takes much of the endurance of carbon steel and some of stainless: no limit holds
 *   there for ever. Strengths by the material's name in the catalogue; of others yield stands for the tensile strength.
 * @example
 * const shaft = exampleLine().shafts[1];
 * shaftSafety(shaft, { alternatingBending: 0.1, torque: 0.2, torqueSwing: 0.05 }).fatigueFactor // → 5.1
 * @see Budynas and Nisbett, "Shigley's Mechanical Engineering Design", 9th ed., eq. 7-7 and §6-9
 */
export function shaftSafety(shaft: Shaft, loading: ShaftLoading): FatigueSafety {
  const { alternatingBending, steadyBending = 0, torque, torqueSwing = 0 } = loading;
  const { bendingNotch = BENDING_NOTCH, torsionNotch = TORSION_NOTCH } = loading;
  for (const [name, load] of Object.entries({ alternatingBending, steadyBending, torque, torqueSwing }))
    checkNotNegative(`shaftSafety: ${name}`, load);
  checkPositive('shaftSafety: bendingNotch', bendingNotch);
  checkPositive('shaftSafety: torsionNotch', torsionNotch);
  const known = fatigueStrength(shaft.material);
  const tensileStrength = loading.tensileStrength ?? known.tensileStrength;
  checkPositive('shaftSafety: tensileStrength', tensileStrength);
  const share = loading.tensileStrength === undefined ? known.enduranceShare : 0.5;
  const enduranceLimit = partEndurance(shaft.outerDiameter, { tensileStrength, share });
  const swinging = { torque: torsionNotch * torqueSwing, bendingMoment: bendingNotch * alternatingBending };
  const steady = { torque: torsionNotch * torque, bendingMoment: bendingNotch * steadyBending };
  const worn =
    shaftStress(shaft, swinging).vonMises / enduranceLimit +
    shaftStress(shaft, steady).vonMises / tensileStrength;
  const peak = { torque: torque + torqueSwing, bendingMoment: alternatingBending + steadyBending };
  return {
    fatigueFactor: 1 / worn,
    yieldFactor: shaftStress(shaft, peak).yieldFactor,
    enduranceLimit,
    tensileStrength,
    source:
      loading.tensileStrength === undefined
        ? known.source
        : 'tensile strength as given; 0.5 of it, as of steel',
  };
}

function partEndurance(
  diameter: number,
  { tensileStrength, share }: { readonly tensileStrength: number; readonly share: number },
): number {
  const surface = Math.min(1, SURFACE[0] * (tensileStrength / 1e6) ** SURFACE[1]);
  const size = SIZE[0] * Math.max(diameter * 1000, SIZE[2]) ** SIZE[1];
  return surface * size * RELIABILITY * Math.min(share * tensileStrength, HIGHEST_ENDURANCE);
}
