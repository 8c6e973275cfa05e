import { numberText } from '../internal/number-text.js';

/** A shaft speed (rad/s) as '6 200 rpm', to a tenth of a per cent at best. */
export function rpmText(speed: number): string {
  return `${numberText((speed * 30) / Math.PI, 3)} rpm`;
}
