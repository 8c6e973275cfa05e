/** An angle modulo half a turn, over −π/2 to π/2. */
export function foldHalfTurn(angle: number): number {
  return angle - Math.PI * Math.ceil(angle / Math.PI - 0.5);
}
