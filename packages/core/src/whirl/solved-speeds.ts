import { modeShape } from './mode-shape.js';
import type { CriticalSpeed } from './types.js';
import type { SolvedWhirl, WhirlPencil } from './whirl-solver.js';

/** Ω = ω/n and the shape of each mode asked for. */
export function solvedSpeeds({ model, pairs }: SolvedWhirl, { order, count }: WhirlPencil): CriticalSpeed[] {
  return pairs.vectors.slice(0, count).map((vector, i) => ({
    speed: Math.sqrt(pairs.values[i] ?? 0) / order,
    shape: modeShape(model, vector),
  }));
}
