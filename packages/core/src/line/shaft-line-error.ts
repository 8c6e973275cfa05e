import { refusal } from '../internal/refuse.js';

/** One thing wrong with a shaft line. */
export interface LineFault {
  /** Where, as in `shafts[1].supports[0].at`. */
  readonly path: string;
  /** What the value there must be. */
  readonly condition: string;
  /** The value that stands there. */
  readonly got: unknown;
  /** `path must be condition, got value` */
  readonly message: string;
}

/** A shaft line that cannot be: every fault of it, with its path and the bad value. */
export class ShaftLineError extends RangeError {
  readonly faults: readonly LineFault[];

  constructor(faults: readonly LineFault[]) {
    const messages = faults.map((fault) => fault.message);
    super(`parseShaftLine: ${messages.length === 1 ? messages.join() : listed(messages)}`);
    this.name = 'ShaftLineError';
    this.faults = faults;
  }
}

function listed(messages: readonly string[]): string {
  return [`${messages.length} faults`, ...messages.map((message) => `  ${message}`)].join('\n');
}

/** A fault in the words of every refusal. */
export function lineFault(path: string, condition: string, got: unknown): LineFault {
  const message = refusal(path === '' ? 'the line' : path, condition, got).message;
  return { path, condition, got, message };
}
