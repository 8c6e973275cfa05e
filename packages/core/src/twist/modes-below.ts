import type { TwistModel } from './build-twist-model.js';
import { chainMatrix } from './chain-matrix.js';

/**
 * How many modes of the line lie below a frequency, its turning as a whole among them.
 *
 * The negative pivots of the dynamic stiffness, and for each bar the modes that it has between ends held fast, ⌊ωt/π⌋.
 *
 * @see W. H. Wittrick and F. W. Williams, "A general algorithm for computing natural frequencies of elastic structures",
 *   Quarterly J. of Mechanics and Applied Mathematics 24(3), 1971, 263–284
 */
export function modesBelow(model: TwistModel, frequency: number): number {
  const { own, across } = chainMatrix(model, frequency);
  let below = 0;
  for (const time of model.time) below += Math.floor((frequency * time) / Math.PI);
  let pivot = 1;
  for (let i = 0; i < own.length; i++) {
    const coupling = across[i] ?? 0;
    pivot = (own[i] ?? 0) - (i === 0 ? 0 : (coupling * coupling) / pivot);
    if (pivot === 0) pivot = -Number.MIN_VALUE / Number.EPSILON;
    if (pivot < 0) below += 1;
  }
  return below;
}
