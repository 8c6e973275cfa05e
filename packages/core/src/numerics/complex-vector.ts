/** A vector of complex numbers, part by part. */
export interface ComplexVector {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
}

export function createComplexVector(size: number): ComplexVector {
  return { real: new Float64Array(size), imaginary: new Float64Array(size) };
}
