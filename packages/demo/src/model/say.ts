import type { Statement } from '@sternline/core';
import type { Units } from './project.js';
import { formatFigure } from './units.js';

/**
 * A sentence of the core in the reader's units.
 *
 * @param statement - template and figures
 * @param units - metric or inch
 * @returns the sentence
 */
export function say({ template, figures }: Statement, units: Units): string {
  return template.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const figure = figures[name];
    return figure ? formatFigure(figure.value, figure.quantity, units) : whole;
  });
}
