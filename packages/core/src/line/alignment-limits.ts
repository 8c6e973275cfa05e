import { checkPositive } from '../internal/checks.js';
import type { AlignmentLimits } from './shim-types.js';

/*
 * rpm; then mm of offset of a short coupling, mm of gap per 100 mm of diameter, and mm of offset per 100 mm of spacer,
 * each acceptable and excellent. https://www.scribd.com/document/331518189/Alignment-Tolerances-pdf; "acceptable" is
 * about 12 mm/s of sliding, http://impactengineering.com/1-services5c.html
 */
const TABLE: readonly Row[] = [
  [750, 0.19, 0.09, 0.13, 0.09, 0.25, 0.15],
  [1500, 0.09, 0.06, 0.07, 0.05, 0.12, 0.07],
  [3000, 0.06, 0.03, 0.04, 0.03, 0.07, 0.04],
  [6000, 0.03, 0.02, 0.03, 0.02, 0.03, 0.02],
];

type Limits = [
  offset: number,
  finerOffset: number,
  gap: number,
  finerGap: number,
  spacer: number,
  finerSpacer: number,
];
type Row = readonly [rpm: number, ...Limits];

const RPM = Math.PI / 30;

/**
 * Limits of misalignment between a motor and the shaft it drives through a flexible coupling, by speed.
 *
 * Between the rows of the table (750, 1500, 3000, 6000 rpm) limits go by a power of speed; beyond the last as 1/speed,
 * since they hold the sliding in the coupling.
 *
 * @param speed - rad/s, greater than 0
 * @returns m and rad; `basis` says whether the table reaches that far
 * @throws RangeError where the speed is not greater than 0
 * @remarks Made for industrial machines with flexible couplings. A universal joint runs at an angle by design: of it
 *   they say nothing, except where a rigid dummy or a flexible coupling takes its place.
 * @example
 * alignmentLimits(314.159265).offset.acceptable // → 0.00006
 * alignmentLimits(1256.637).basis // → 'beyond the table'
 * @see https://www.scribd.com/document/331518189/Alignment-Tolerances-pdf
 */
export function alignmentLimits(speed: number): AlignmentLimits {
  checkPositive('alignmentLimits: speed', speed);
  const { limits, basis } = rowAt(speed / RPM);
  const [offset, finerOffset, gap, finerGap, spacer, finerSpacer] = limits;
  return {
    offset: { acceptable: offset / 1000, excellent: finerOffset / 1000 },
    angularity: { acceptable: gap / 100, excellent: finerGap / 100 },
    spacer: { acceptable: spacer / 100, excellent: finerSpacer / 100 },
    softFoot: 0.00006,
    basis,
  };
}

function rowAt(rpm: number): { limits: Limits; basis: AlignmentLimits['basis'] } {
  const above = TABLE.findIndex(([speed]) => speed * (1 + 1e-9) >= rpm);
  const upper = TABLE.at(above);
  if (above === -1 || !upper) {
    const [last, ...limits] = TABLE.at(-1) ?? [NaN, NaN, NaN, NaN, NaN, NaN, NaN];
    return { limits: scaled(limits, () => last / rpm), basis: 'beyond the table' };
  }
  const lower = TABLE[above - 1];
  const [to, ...limits] = upper;
  if (!lower)
    return { limits: scaled(limits, () => 1), basis: rpm < to * (1 - 1e-9) ? 'below the table' : 'table' };
  const [from, ...before] = lower;
  const portion = Math.log(rpm / to) / Math.log(from / to);
  const power = (i: number): number => ((before[i] ?? NaN) / (limits[i] ?? NaN)) ** portion;
  return { limits: scaled(limits, power), basis: 'table' };
}

function scaled([a, b, c, d, e, f]: Readonly<Limits>, by: (i: number) => number): Limits {
  return [a * by(0), b * by(1), c * by(2), d * by(3), e * by(4), f * by(5)];
}
