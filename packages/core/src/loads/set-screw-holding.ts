import { checkPositive, checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { Fastener } from '../line/types.js';
import { METRIC_SEATING, SET_SCREWS } from './set-screw-table.js';
import type { SetScrewHolding } from './types.js';

/** Holding of each point over that of a cup point: https://www.yumpu.com/en/document/view/46387953/91430-sps-cover-edited-electronic-fasteners-inc/23 */
const POINTS = { cup: 1, cone: 1.07, flat: 0.92, dog: 0.92, oval: 0.9 } as const;
/** A flat holds 6 % more torque and nothing more along the shaft: http://machinedesign.com/article/setscrews-1115 */
const FLAT = 1.06;
/** Each further screw, opposite or at an angle; in line along the shaft it would be 1. From memory of makers' guides. */
const FURTHER_SCREW = 0.3;
const SAME_SIZE = 1e-3;

export interface SetScrewSeat {
  /** m, of the shaft under the screw. */
  readonly shaftDiameter: number;
  /** Default `'cup'`. */
  readonly point?: keyof typeof POINTS;
}

/**
 * The torque and the push along the shaft that set screws hold a hub against.
 *
 * T = F d / 2, F of the size's table, in proportion to the seating torque
 *
 * @param fastener - a set screw: `size` in m, `count`, default 1, `flat`, and `seatingTorque` in N·m, else that of the inch
 *   table, at most what is recommended
 * @param seat - `shaftDiameter` in m, and the screw's `point`, default cup
 * @returns N and N·m at which the hub has crept by 0.25 mm, and how they were arrived at
 * @throws RangeError where it is no set screw, or a figure is missing or out of its domain
 * @remarks Sizes between those of the inch table by straight lines on logarithmic scales; beyond its ends by the square of the
 *   size. More seating torque than is recommended counts no further: of M2 to M6 that of their own table. Thread lock keeps a screw from working loose and adds
 *   nothing to what it holds; it lowers the safety asked of it in {@link lineLoads}. A shaft nearly as hard as the screw costs
 *   up to 15 %. Of further screws each adds 30 %, as if set at an angle.
 * @example
 * const holding = setScrewHolding({ kind: 'set-screw', size: 0.003, flat: true }, { shaftDiameter: 0.005 });
 * holding.axial // → 793
 * holding.torque // → 2.10
 * @see Shigley, Mechanical Engineering Design, 9th ed., §7-7 and table 7-4; the sources of each factor beside it
 */
export function setScrewHolding(fastener: Fastener, seat: SetScrewSeat): SetScrewHolding {
  const { kind, size, count = 1, flat = false, seatingTorque } = fastener;
  const { shaftDiameter, point = 'cup' } = seat;
  if (kind !== 'set-screw') throw refusal('setScrewHolding: kind', "'set-screw'", kind);
  checkPositive('setScrewHolding: size', size ?? NaN);
  checkWhole('setScrewHolding: count', count, [1, Infinity]);
  checkPositive('setScrewHolding: shaftDiameter', shaftDiameter);
  if (seatingTorque !== undefined) checkPositive('setScrewHolding: seatingTorque', seatingTorque);
  if (!(point in POINTS))
    throw refusal('setScrewHolding: point', `one of ${Object.keys(POINTS).join(', ')}`, point);
  const base = tableAt(size ?? NaN);
  const recommendedTorque = recommended(size ?? NaN, base.seatingTorque);
  const counted = Math.min(seatingTorque ?? base.seatingTorque, recommendedTorque);
  const factors = [
    { name: 'seating torque', factor: counted / base.seatingTorque },
    { name: 'point', factor: POINTS[point] },
    { name: 'further screws', factor: 1 + FURTHER_SCREW * (count - 1) },
  ];
  const axial = factors.reduce((force, { factor }) => force * factor, base.axial);
  const onFlat = flat ? [{ name: 'flat (torque alone)', factor: FLAT }] : [];
  return {
    axial,
    torque: ((axial * shaftDiameter) / 2) * (flat ? FLAT : 1),
    seatingTorque: counted,
    recommendedTorque,
    basis: base.basis,
    factors: [...factors, ...onFlat],
  };
}

function tableAt(size: number): { axial: number; seatingTorque: number; basis: SetScrewHolding['basis'] } {
  const exact = SET_SCREWS.find((row) => Math.abs(row.size / size - 1) < SAME_SIZE);
  if (exact) return { axial: exact.axial, seatingTorque: exact.seatingTorque, basis: 'table' };
  const above = SET_SCREWS.findIndex((row) => row.size > size);
  const lower = SET_SCREWS[above - 1];
  const upper = SET_SCREWS[above];
  if (lower && upper) {
    const share = Math.log(size / lower.size) / Math.log(upper.size / lower.size);
    const between = (from: number, to: number): number => from * (to / from) ** share;
    return {
      axial: between(lower.axial, upper.axial),
      seatingTorque: between(lower.seatingTorque, upper.seatingTorque),
      basis: 'interpolated',
    };
  }
  const end = upper ?? SET_SCREWS.at(-1);
  const ratio = size / (end?.size ?? size);
  return {
    axial: (end?.axial ?? 0) * ratio ** 2,
    seatingTorque: (end?.seatingTorque ?? 0) * ratio ** 3,
    basis: 'extrapolated',
  };
}

/** A metric size as its own table has it; others as the inch table, but no less than a smaller metric size. */
function recommended(size: number, inch: number): number {
  const smaller = METRIC_SEATING.findLast(([metric]) => metric <= size * (1 + SAME_SIZE));
  if (!smaller) return inch;
  const [metric, torque] = smaller;
  return Math.abs(metric / size - 1) < SAME_SIZE ? torque : Math.max(inch, torque);
}
