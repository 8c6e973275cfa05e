import type { Tridiagonal } from './chain-matrix.js';

/**
 * The vector that a singular tridiagonal matrix takes to zero, in no scale.
 *
 * Pivots from one end and from the other meet in the row that is nearest to zero, where the vector is large; from there it
 * unrolls both ways without dividing by a small number.
 *
 * @see Inderjit Dhillon and Beresford Parlett, "Multiple representations to compute orthogonal eigenvectors of symmetric
 *   tridiagonal matrices", Linear Algebra and its Applications 387, 2004 (twisted factorisation)
 */
export function modeVector({ own, across }: Tridiagonal): Float64Array {
  const size = own.length;
  const forward = pivotsOf({ own, across });
  const backward = pivotsOf(turned({ own, across })).reverse();
  const twist = nearestToZero(own, forward, backward);
  const vector = new Float64Array(size);
  vector[twist] = 1;
  for (let i = twist - 1; i >= 0; i--)
    vector[i] = (-(across[i + 1] ?? 0) * (vector[i + 1] ?? 0)) / (forward[i] ?? 1);
  for (let i = twist + 1; i < size; i++)
    vector[i] = (-(across[i] ?? 0) * (vector[i - 1] ?? 0)) / (backward[i] ?? 1);
  return vector;
}

function nearestToZero(own: Float64Array, forward: Float64Array, backward: Float64Array): number {
  let row = 0;
  let least = Infinity;
  own.forEach((entry, i) => {
    const meeting = Math.abs((forward[i] ?? 0) + (backward[i] ?? 0) - entry);
    if (meeting >= least) return;
    least = meeting;
    row = i;
  });
  return row;
}

function pivotsOf({ own, across }: Tridiagonal): Float64Array {
  const pivots = new Float64Array(own.length);
  let pivot = 1;
  own.forEach((entry, i) => {
    pivot = entry - (i === 0 ? 0 : (across[i] ?? 0) ** 2 / pivot);
    if (pivot === 0) pivot = Number.EPSILON * Math.abs(entry) || Number.MIN_VALUE / Number.EPSILON;
    pivots[i] = pivot;
  });
  return pivots;
}

/** The same matrix counted from its other end. */
function turned({ own, across }: Tridiagonal): Tridiagonal {
  const size = own.length;
  return {
    own: own.slice().reverse(),
    across: Float64Array.from({ length: size }, (_, i) => (i === 0 ? 0 : (across[size - i] ?? 0))),
  };
}
