/**
 * The one place that words an argument error: `function: argument must be <condition>, got <value>`.
 *
 * @param where - the public function, with the argument after a colon: `'welch: segmentLength'`
 * @param condition - what the argument must be: `'a power of two'`
 * @param got - the value that was given
 * @returns the error, for the caller to throw
 */
export function refusal(where: string, condition: string, got: unknown): RangeError {
  return new RangeError(`${where} must be ${condition}, got ${describe(got)}`);
}

/** A value as an error message shows it, short enough to read. */
export function describe(value: unknown): string {
  if (typeof value === 'string') return JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}…` : value);
  if (typeof value === 'number' || value === undefined || value === null) return String(value);
  if (typeof value === 'boolean' || typeof value === 'bigint') return String(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return typeof value === 'object' ? 'an object' : `a ${typeof value}`;
}
