import { fillTemplate } from './fill-template.js';
import type { Figure, Quantity, Statement } from './types.js';

/** A sentence made of a template and its figures, worded in the trade's units. */
export function makeStatement(template: string, figures: Readonly<Record<string, Figure>>): Statement {
  return { template, figures, sentence: fillTemplate(template, { figures, format: formatFigure }) };
}

/** A figure for {@link makeStatement}. */
export function figure(quantity: Quantity, value: number): Figure {
  return { quantity, value };
}

/**
 * A figure in the trade's units with the digits it deserves: rpm, degrees, millimetres, hertz, per cent.
 *
 * @param figure - a value in SI and the kind of quantity it is
 * @returns the value with its unit, thousands set apart by a narrow no-break space
 * @example
 * formatFigure({ quantity: 'speed', value: 649.3 }) // → '6\u202f200 rpm'
 * formatFigure({ quantity: 'angle', value: 0.2443 }) // → '14.0°'
 */
export function formatFigure(figure: Figure): string {
  const { quantity, value } = figure;
  switch (quantity) {
    case 'speed':
      return `${digits((value * 30) / Math.PI, 3)} rpm`;
    case 'angle':
      return `${fixed((value * 180) / Math.PI)}°`;
    case 'length':
      return `${digits(value * 1000, 3)} mm`;
    case 'frequency':
      return `${digits(value, 3)} Hz`;
    case 'torque':
      return Math.abs(value) < 1 ? `${digits(value * 1000, 3)} N·mm` : `${digits(value, 3)} N·m`;
    case 'speed-angle':
      return `${digits((value * 5400) / Math.PI ** 2, 2)} rpm × degrees`;
    case 'mass':
      return `${digits(value * 1000, 3)} g`;
    case 'force':
      return `${digits(value, 3)} N`;
    case 'voltage':
      return `${digits(value, 3)} V`;
    case 'share':
      return `${digits(value * 100, 2)} %`;
    case 'ratio':
      return digits(value, 3);
    case 'count':
      return String(Math.round(value));
  }
}

function fixed(value: number): string {
  return Math.abs(value) >= 1 || value === 0 ? value.toFixed(1) : value.toPrecision(2);
}

/** `value` to `significant` digits, never in powers of ten. */
function digits(value: number, significant: number): string {
  if (value === 0 || !Number.isFinite(value)) return String(value);
  const places = significant - 1 - Math.floor(Math.log10(Math.abs(value)));
  const rounded = places >= 0 ? value.toFixed(Math.min(places, 12)) : nearest(value, 10 ** -places);
  const [whole = '', fraction] = rounded.split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, '\u202f') : groupFour(whole);
  return fraction === undefined ? grouped : `${grouped}.${fraction}`;
}

function groupFour(whole: string): string {
  return whole.replace(/^(-?\d)(\d{3})$/, '$1\u202f$2');
}

function nearest(value: number, step: number): string {
  return String(Math.round(value / step) * step);
}
