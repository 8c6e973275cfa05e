import type { WhirlModel } from './build-whirl-model.js';
import type { ModeShape } from './types.js';

/**
 * Spreads a vector over the nodes of the line, scaled so that its largest displacement is +1.
 *
 * @param vector - one value for each unknown of the model
 */
export function modeShape({ mesh, freedoms }: WhirlModel, vector: Float64Array): ModeShape {
  const displacement = Float64Array.from(freedoms.displacement, (index) => vector[index] ?? 0);
  const slope = Float64Array.from(freedoms.slope, (index) => vector[index] ?? 0);
  let largest = 0;
  for (const value of displacement) if (Math.abs(value) > Math.abs(largest)) largest = value;
  const scale = largest === 0 ? 1 : 1 / largest;
  return {
    shaft: mesh.shaft,
    at: mesh.at,
    station: mesh.station,
    displacement: displacement.map((value) => value * scale || 0),
    slope: slope.map((value) => value * scale || 0),
  };
}
