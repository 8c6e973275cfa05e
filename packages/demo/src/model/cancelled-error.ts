/** Work that the user stopped. */
export class CancelledError extends Error {
  constructor() {
    super('The work was cancelled.');
    this.name = 'CancelledError';
  }
}
