import { refusal } from '../internal/refuse.js';
import { listText } from '../internal/list-text.js';
import type { Motor, Propeller, ShaftLine, Supply } from '../line/types.js';

export interface Drive {
  readonly motor: Motor;
  readonly supply: Supply;
  readonly propeller: Propeller;
}

/** @throws RangeError naming every part of the drive that the line lacks */
export function driveOf(where: string, { motor, supply, propeller }: ShaftLine): Drive {
  if (motor && supply && propeller) return { motor, supply, propeller };
  const missing = Object.entries({ motor, supply, propeller })
    .filter(([, part]) => part === undefined)
    .map(([name]) => `line.${name}`);
  throw refusal(`${where}: ${listText(missing)}`, 'given', undefined);
}
