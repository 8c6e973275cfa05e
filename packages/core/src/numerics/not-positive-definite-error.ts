/** A matrix that must be positive definite is not. */
export class NotPositiveDefiniteError extends Error {
  /** Row at which the factorisation failed. */
  readonly row: number;

  constructor(row: number) {
    super(`the matrix is not positive definite: pivot ${row} is not above rounding`);
    this.name = 'NotPositiveDefiniteError';
    this.row = row;
  }
}
