import type { LineFreedoms } from './line-freedoms.js';

/** Unknowns of the element between a node and the next: displacement and slope at one end, then at the other; −1 held. */
export function elementRows({ displacement, slope }: LineFreedoms, node: number): number[] {
  return [displacement[node] ?? -1, slope[node] ?? -1, displacement[node + 1] ?? -1, slope[node + 1] ?? -1];
}
