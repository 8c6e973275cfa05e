import type { OrderAmplitudes } from '../orders/types.js';
import type { Recording } from '../recording/types.js';
import type { ChannelGroup } from './channel-groups.js';
import type { SpeedPair } from './compare-types.js';
import type { SegmentPlan } from './order-segments.js';

/** One of the two recordings with what was read from it. */
export interface ComparedSide {
  readonly recording: Recording;
  readonly measured: OrderAmplitudes;
  readonly plan: SegmentPlan;
}

export interface GuardSettings {
  /** rad/s, as told by the caller. */
  readonly speed: SpeedPair;
  readonly orders: readonly number[];
  readonly channels: 'together' | 'apart';
  readonly tolerance: number;
  readonly repeatability: number;
  readonly groups: readonly ChannelGroup[];
}

/** Half-overlapping segments below which their scatter says too little. */
export const FEWEST_SEGMENTS = 11;
/** rad; a phone laid back by hand comes within this. Common practice. */
export const SAME_MOUNT = (15 * Math.PI) / 180;
/** Change of the noise by which gain, distance or surroundings differ: 3 dB. */
export const SAME_FLOOR = Math.SQRT2;
