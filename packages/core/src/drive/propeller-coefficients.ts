import { checkNotNegative, checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { type SeriesTerm, THRUST_TERMS, TORQUE_TERMS } from './b-series-terms.js';
import type { PropellerCoefficients } from './types.js';

/** What the series needs to know of a propeller. */
export interface SeriesPropeller {
  /** 2 to 7. */
  readonly blades: number;
  /** Pitch over diameter, 0.5 to 1.4. */
  readonly pitchRatio: number;
  /** Developed blade area over disc area, 0.3 to 1.05. */
  readonly areaRatio: number;
  /** J = Vₐ / (nD), at least 0. Default 0. */
  readonly advance?: number;
}

/**
 * Thrust and torque coefficients of a propeller of the Wageningen B series in open water.
 *
 * K = Σ C Jˢ (P/D)ᵗ (Aₑ/A₀)ᵘ Zᵛ, with 39 terms for K_T and 47 for K_Q
 *
 * @param propeller - blade count, pitch ratio, area ratio and advance coefficient
 * @returns coefficients, dimensionless; `efficiency` is 0 at J = 0
 * @throws RangeError outside the series: blades from 2 to 7, pitch ratio from 0.5 to 1.4, area ratio from 0.3 to 1.05
 * @remarks Fitted at a Reynolds number of 2·10⁶. A model's propeller runs at some 10⁴ to 10⁵, where blades drag more:
 *   expect rather more torque and less thrust. The fit is known to be weak with few blades; beyond the J at which thrust
 *   vanishes it means nothing.
 * @example
 * propellerCoefficients({ blades: 4, pitchRatio: 1, areaRatio: 0.55, advance: 0.4 }).torque // → 0.046552
 * @see M. W. C. Oosterveld and P. van Oossanen, International Shipbuilding Progress 22, 1975; M. M. Bernitsas, D. Ray and
 *   P. Kinley, University of Michigan report 237, 1981
 */
export function propellerCoefficients(propeller: SeriesPropeller): PropellerCoefficients {
  const { blades, pitchRatio, areaRatio, advance = 0 } = propeller;
  checkWhole('propellerCoefficients: blades', blades, [2, 7]);
  checkRange('pitchRatio', pitchRatio, [0.5, 1.4]);
  checkRange('areaRatio', areaRatio, [0.3, 1.05]);
  checkNotNegative('propellerCoefficients: advance', advance);
  const shape = { blades, pitchRatio, areaRatio, advance };
  const thrust = sumTerms(THRUST_TERMS, shape);
  const torque = sumTerms(TORQUE_TERMS, shape);
  return { thrust, torque, efficiency: (advance * thrust) / (2 * Math.PI * torque) };
}

function checkRange(name: string, value: number, [least, most]: readonly [number, number]): void {
  if (value >= least && value <= most) return;
  throw refusal(
    `propellerCoefficients: ${name}`,
    `from ${least} to ${most}, where the series holds (give the propeller a torqueCoefficient of its own otherwise)`,
    value,
  );
}

function sumTerms(
  terms: readonly SeriesTerm[],
  { blades, pitchRatio, areaRatio, advance }: Required<SeriesPropeller>,
): number {
  const advances = powers(advance, 3);
  const pitches = powers(pitchRatio, 6);
  const areas = powers(areaRatio, 2);
  const counts = powers(blades, 2);
  let sum = 0;
  for (const [factor, s, t, u, v] of terms)
    sum += factor * (advances[s] ?? 0) * (pitches[t] ?? 0) * (areas[u] ?? 0) * (counts[v] ?? 0);
  return sum;
}

/** 1, x, … x to the `highest`. */
function powers(x: number, highest: number): number[] {
  const list = [1];
  for (let i = 1; i <= highest; i++) list.push((list[i - 1] ?? 0) * x);
  return list;
}
