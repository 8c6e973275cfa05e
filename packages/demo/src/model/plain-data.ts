/** Properties of plain data that came from outside. */
export type Fields = Readonly<Record<string, unknown>>;

/** The value as properties, or undefined where it is no plain object. */
export function asFields(value: unknown): Fields | undefined {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : undefined;
}

/** The value as text, empty where it is none. */
export function asText(value: unknown): string {
  return typeof value === 'string' ? value : '';
}

/** Whether the value is a finite number greater than 0. */
export function isPositive(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value) && value > 0;
}
