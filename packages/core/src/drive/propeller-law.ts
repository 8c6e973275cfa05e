import { checkNotNegative, checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { Propeller } from '../line/types.js';
import { propellerCoefficients } from './propeller-coefficients.js';
import type { PropellerConditions, PropellerState } from './types.js';

/** The torque that a propeller asks for at any speed. */
export interface PropellerLaw {
  /** N·m at a speed in rad/s, at least 0. */
  readonly torque: (speed: number) => number;
  /** N·m·s²: Q = coefficient · ω², where it is the same at every speed. */
  readonly squareLaw?: number;
  readonly state: (speed: number) => PropellerState;
}

/** Members of the series as it was built and tested, the middle one for each blade count. */
const USUAL_AREA: Readonly<Record<number, number>> = { 2: 0.3, 3: 0.5, 4: 0.55, 5: 0.75, 6: 0.8, 7: 0.85 };
/** Kinematic viscosity of fresh water at 16 °C, m²/s. From memory. */
const VISCOSITY = 1.1e-6;
/** Chord at 0.75 R over the diameter is this times Aₑ/A₀ over Z. Oosterveld and van Oossanen, 1975; from memory. */
const CHORD = 2.073;
/** Step of J in the search for the place where torque vanishes, and its end. */
const ADVANCE_STEP = 0.05;
const ADVANCE_END = 2;

/**
 * The torque of a propeller against speed, from its own coefficient or from the series.
 *
 * @param where - the public function, for its refusals
 */
export function propellerLaw(
  where: string,
  propeller: Propeller,
  conditions: PropellerConditions,
): PropellerLaw {
  const { waterDensity = 1000, waterSpeed, areaRatio } = conditions;
  checkPositive(`${where}: waterDensity`, waterDensity);
  if (waterSpeed !== undefined) checkNotNegative(`${where}: waterSpeed`, waterSpeed);
  if (conditions.advance !== undefined) checkNotNegative(`${where}: advance`, conditions.advance);
  if (waterSpeed !== undefined && conditions.advance !== undefined)
    throw refusal(`${where}: advance`, 'left out where waterSpeed is given', conditions.advance);
  const scale = (waterDensity * propeller.diameter ** 5) / (4 * Math.PI ** 2);
  const advanceAt = advanceLaw(propeller, conditions);
  if (propeller.torqueCoefficient !== undefined)
    return givenLaw(propeller.torqueCoefficient, { scale, advanceAt });
  const shape = seriesShape(where, propeller, areaRatio);
  return seriesLaw({ propeller, shape, scale, advanceAt, fixed: waterSpeed === undefined, waterDensity });
}

function advanceLaw(
  { diameter }: Propeller,
  { advance = 0, waterSpeed }: PropellerConditions,
): (speed: number) => number {
  if (waterSpeed === undefined) return () => advance;
  if (waterSpeed === 0) return () => 0;
  return (speed) => (2 * Math.PI * waterSpeed) / (speed * diameter);
}

function givenLaw(
  torqueCoefficient: number,
  { scale, advanceAt }: { readonly scale: number; readonly advanceAt: (speed: number) => number },
): PropellerLaw {
  const squareLaw = torqueCoefficient * scale;
  return {
    squareLaw,
    torque: (speed) => squareLaw * speed ** 2,
    state: (speed) => ({ torqueCoefficient, source: 'given', advance: advanceAt(speed) }),
  };
}

interface SeriesShape {
  readonly blades: number;
  readonly pitchRatio: number;
  readonly areaRatio: number;
}

function seriesShape(where: string, propeller: Propeller, given: number | undefined): SeriesShape {
  const { blades, pitch, diameter } = propeller;
  const areaRatio = given ?? USUAL_AREA[blades];
  if (areaRatio === undefined) {
    const condition = 'given, since the series has 2 to 7 blades';
    throw refusal(`${where}: line.propeller.torqueCoefficient`, condition, undefined);
  }
  const pitchRatio = pitch / diameter;
  if (!(pitchRatio >= 0.5 && pitchRatio <= 1.4)) {
    const condition = `given, since the series has pitch over diameter from 0.5 to 1.4, not ${Number(pitchRatio.toPrecision(3))}`;
    throw refusal(`${where}: line.propeller.torqueCoefficient`, condition, undefined);
  }
  return { blades, pitchRatio, areaRatio };
}

interface SeriesParts {
  readonly propeller: Propeller;
  readonly shape: SeriesShape;
  readonly scale: number;
  readonly advanceAt: (speed: number) => number;
  /** Whether J is the same at every speed. */
  readonly fixed: boolean;
  readonly waterDensity: number;
}

function seriesLaw({ propeller, shape, scale, advanceAt, fixed, waterDensity }: SeriesParts): PropellerLaw {
  const end = fixed && advanceAt(1) === 0 ? Infinity : vanishingAdvance(shape);
  const coefficientsAt = (speed: number) => {
    const advance = advanceAt(speed);
    return advance < end ? propellerCoefficients({ ...shape, advance }) : { thrust: 0, torque: 0 };
  };
  const { diameter } = propeller;
  const state = (speed: number): PropellerState => {
    const advance = advanceAt(speed);
    const { thrust, torque } = coefficientsAt(speed);
    const turns = speed / (2 * Math.PI);
    const alongBlade = turns * diameter * Math.hypot(0.75 * Math.PI, Number.isFinite(advance) ? advance : 0);
    const chord = (CHORD * shape.areaRatio * diameter) / shape.blades;
    return {
      torqueCoefficient: torque,
      source: 'series',
      advance,
      thrust: thrust * waterDensity * turns ** 2 * diameter ** 4,
      reynoldsNumber: (alongBlade * chord) / VISCOSITY,
    };
  };
  const torque = (speed: number): number => coefficientsAt(speed).torque * scale * speed ** 2;
  return fixed ? { squareLaw: coefficientsAt(1).torque * scale, torque, state } : { torque, state };
}

/** The J at which the torque of the fit first vanishes; past it the propeller would drive the motor. */
function vanishingAdvance(shape: SeriesShape): number {
  const torqueAt = (advance: number): number => propellerCoefficients({ ...shape, advance }).torque;
  for (let advance = ADVANCE_STEP; advance <= ADVANCE_END; advance += ADVANCE_STEP) {
    const next = torqueAt(advance);
    if (next > 0) continue;
    const before = torqueAt(advance - ADVANCE_STEP);
    return advance - (ADVANCE_STEP * next) / (next - before);
  }
  return ADVANCE_END;
}
