import type { FollowedSpeed } from './follow-speed.js';

/** Margin over the best rival at which the path is as likely right as wrong, and how fast that changes; from seeded runs. */
const EVEN = 0.8;
const WIDTH = 0.3;

/** 0 … 1, from how far the path leads over its multiples and fractions: noise leads over nothing. */
export function trackConfidence({ margin }: FollowedSpeed): number {
  return 1 / (1 + Math.exp(-(margin - EVEN) / WIDTH));
}
