/** An angle (rad) from 0 to below 2π. */
export function onCircle(angle: number): number {
  const turn = 2 * Math.PI;
  const rest = ((angle % turn) + turn) % turn;
  return rest === turn ? 0 : rest;
}
