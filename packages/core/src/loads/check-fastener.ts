import { STOCK } from '../line/stock.js';
import type { Fastener } from '../line/types.js';
import { setScrewHolding } from './set-screw-holding.js';
import type { FastenerCheck, HoldingOffer } from './types.js';

/**
 * Safety of set screws: 1.5 to 2 at rest, 4 to 8 where the load shakes,
 * https://studylib.net/doc/18241577/socket-set-screws-holding-power. Which end of the wide range a screw needs is taken here
 * from its thread lock: our choice.
 */
const STATIC = 2;
const LOCKED = 4;
const UNLOCKED = 8;
/** Swing over mean up to which a torque counts as steady. Our choice. */
const STEADY = 0.02;
/** The screw about half as thick as the shaft, as makers advise; a little over still seats. */
const THICKEST = 0.6;

export interface FastenerTask {
  readonly fastener: Fastener;
  /** m */
  readonly shaftDiameter: number;
  /** N·m, mean. */
  readonly torque: number;
  /** N·m, amplitude about the mean. */
  readonly swing: number;
}

/** Whether a joint's set screws hold against the peak of the torque, and if not, what would; undefined for what is no set screw. */
export function checkFastener({
  fastener,
  shaftDiameter,
  torque,
  swing,
}: FastenerTask): FastenerCheck | undefined {
  if (fastener.kind !== 'set-screw' || fastener.size === undefined) return undefined;
  const peakTorque = torque + swing;
  const shakes = swing > STEADY * torque;
  const rate = (one: Fastener) => {
    const holding = setScrewHolding(one, { shaftDiameter });
    const required = !shakes ? STATIC : one.threadLock === true ? LOCKED : UNLOCKED;
    return { holding, required, factor: holding.torque / peakTorque };
  };
  const own = rate(fastener);
  const holds = own.factor >= own.required;
  const offer = holds ? undefined : firstThatHolds(fastener, { shaftDiameter, rate });
  return { peakTorque, ...own, holds, ...(offer ? { offer } : {}) };
}

interface Search {
  readonly shaftDiameter: number;
  readonly rate: (fastener: Fastener) => Pick<FastenerCheck, 'holding' | 'required' | 'factor'>;
}

/** The changes in order of the work that they take. */
function firstThatHolds(fastener: Fastener, { shaftDiameter, rate }: Search): HoldingOffer | undefined {
  for (const option of [...changes(fastener), ...thicker(fastener, shaftDiameter)]) {
    const { holding, required, factor } = rate(option);
    if (factor < required) continue;
    const { size = 0, count = 1, flat = false, threadLock = false } = option;
    return { size, count, flat, threadLock, seatingTorque: holding.seatingTorque, factor };
  }
  return undefined;
}

function changes(fastener: Fastener): Fastener[] {
  const locked = { ...fastener, threadLock: true };
  const flatted = { ...locked, flat: true };
  // more than any size takes: counted up to what is recommended
  const seated = { ...flatted, seatingTorque: Number.MAX_VALUE };
  return [locked, flatted, seated, { ...seated, count: Math.max(2, fastener.count ?? 1) }];
}

function thicker(fastener: Fastener, shaftDiameter: number): Fastener[] {
  const sizes = STOCK.setScrewSizes.filter(
    (size) => size > (fastener.size ?? 0) && size <= THICKEST * shaftDiameter,
  );
  return sizes.flatMap((size) => changes({ ...fastener, size }).slice(2));
}
