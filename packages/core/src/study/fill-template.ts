import type { Figure } from './types.js';

/**
 * A sentence of its template and figures, each figure worded by the caller: for readers with units of their own.
 *
 * @param template - the sentence with each figure as `{name}`, as a `Statement` carries it
 * @param options - `figures` by name, and `format`, which words one figure
 * @returns the sentence; a name without a figure stays as it is
 * @example
 * const figures = { limit: { value: 100, quantity: 'speed' } };
 * fillTemplate('Stay below {limit}.', { figures, format: ({ value }) => `${value} rad/s` }) // → 'Stay below 100 rad/s.'
 */
export function fillTemplate(
  template: string,
  {
    figures,
    format,
  }: {
    readonly figures: Readonly<Record<string, Figure>>;
    readonly format: (figure: Figure) => string;
  },
): string {
  return template.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const found = figures[name];
    return found ? format(found) : whole;
  });
}
