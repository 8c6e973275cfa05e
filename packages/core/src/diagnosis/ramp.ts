/** 0 below `from`, 1 above `to`, straight between. */
export function ramp(value: number, from: number, to: number): number {
  return Math.max(0, Math.min(1, (value - from) / (to - from)));
}
