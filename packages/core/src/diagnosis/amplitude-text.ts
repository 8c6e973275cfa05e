import { numberText } from '../internal/number-text.js';

/** '0.803 m/s²' or '0.0096 of full scale'. */
export function amplitudeText(amplitude: number, unit: string, digits = 3): string {
  return `${numberText(amplitude, digits)} ${unit === 'full scale' ? 'of full scale' : unit}`;
}
