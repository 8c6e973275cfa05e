/**
 * Symmetric matrix whose entries vanish further than `halfBandwidth` from the diagonal.
 *
 * Row i holds its entries from column i − halfBandwidth to i, one row after the other:
 * entry (i, j) with j ≤ i stands at `i * (halfBandwidth + 1) + halfBandwidth - (i - j)`.
 */
export interface SymmetricBand {
  readonly size: number;
  readonly halfBandwidth: number;
  readonly values: Float64Array;
}

/** Lower triangular L of a banded matrix A = L Lᵀ, stored as {@link SymmetricBand} stores its lower half. */
export interface BandFactor {
  readonly size: number;
  readonly halfBandwidth: number;
  readonly values: Float64Array;
  /** 1 / Lᵢᵢ, since the solves only ever divide by the diagonal. */
  readonly reciprocals: Float64Array;
}

/** Eigenvalues with their vectors: `vectors[i]` belongs to `values[i]`. */
export interface Eigenpairs {
  readonly values: Float64Array;
  readonly vectors: readonly Float64Array[];
}
