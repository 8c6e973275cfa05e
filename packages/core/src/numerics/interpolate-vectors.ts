import { dot } from './dot.js';

/** Vectors that depend on a parameter, known at one value of it. */
export interface VectorSample {
  readonly at: number;
  readonly vectors: readonly Float64Array[];
}

/**
 * Vectors at a value of their parameter, by Lagrange's polynomial through those known at others.
 *
 * @param samples - at different values, with alike many vectors each; eigenvectors, whose sign is free, are turned to
 *   agree with those of the last sample
 * @returns new vectors; none where there are no samples
 * @see Germund Dahlquist and Åke Björck, "Numerical Methods", 1974, §4.3.2
 */
export function interpolateVectors(samples: readonly VectorSample[], at: number): Float64Array[] {
  const last = samples.at(-1);
  if (!last) return [];
  return last.vectors.map((reference, place) => {
    const sum = new Float64Array(reference.length);
    for (const sample of samples) {
      const vector = sample.vectors[place] ?? reference;
      const weight = lagrangeWeight(samples, sample, at) * (dot(vector, reference) < 0 ? -1 : 1);
      for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] ?? 0) + weight * (vector[i] ?? 0);
    }
    return sum;
  });
}

function lagrangeWeight(samples: readonly VectorSample[], own: VectorSample, at: number): number {
  return samples.reduce(
    (weight, other) => (other === own ? weight : (weight * (at - other.at)) / (own.at - other.at)),
    1,
  );
}
