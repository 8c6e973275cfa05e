/** An iteration did not reach its tolerance. */
export class NoConvergenceError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'NoConvergenceError';
  }
}
