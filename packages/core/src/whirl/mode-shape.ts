import type { WhirlModel } from './build-whirl-model.js';
import type { ModeShape } from './types.js';

/**
 * Spreads a vector over the nodes of the line, scaled so that its largest displacement is +1.
 *
 * @param vector - one value for each unknown of the model
 */
export function modeShape({ mesh, freedoms }: WhirlModel, vector: Float64Array): ModeShape {
  let largest = 0;
  for (const index of freedoms.displacement) {
    const value = vector[index] ?? 0;
    if (Math.abs(value) > Math.abs(largest)) largest = value;
  }
  const scale = largest === 0 ? 1 : 1 / largest;
  return {
    shaft: mesh.shaft,
    at: mesh.at,
    station: mesh.station,
    displacement: spread(freedoms.displacement, vector, scale),
    slope: spread(freedoms.slope, vector, scale),
  };
}

function spread(freedoms: Int32Array, vector: Float64Array, scale: number): Float64Array {
  const values = new Float64Array(freedoms.length);
  for (let node = 0; node < values.length; node++) {
    const index = freedoms[node] ?? -1;
    if (index >= 0) values[node] = (vector[index] ?? 0) * scale;
  }
  return values;
}
