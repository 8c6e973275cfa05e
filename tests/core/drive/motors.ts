import {
  exampleLine,
  parseShaftLine,
  type Motor,
  type Propeller,
  type ShaftLine,
  type Supply,
} from '@sternline/core';

export const RPM = Math.PI / 30;

/** The sample ferry's shafts with a drive of one's own. */
export function lineWith(drive: {
  readonly motor?: Partial<Motor>;
  readonly supply?: Partial<Supply>;
  readonly propeller?: Partial<Propeller>;
}): ShaftLine {
  const line = exampleLine();
  return parseShaftLine({
    ...line,
    motor: { ...line.motor, ...drive.motor },
    supply: { ...line.supply, ...drive.supply },
    propeller: { ...line.propeller, ...drive.propeller },
  });
}

/** A line that lacks these parts of its drive. */
export function lineWithout(...parts: readonly ('motor' | 'supply' | 'propeller')[]): ShaftLine {
  const entries = Object.entries(exampleLine()).filter(
    ([key]) => !(parts as readonly string[]).includes(key),
  );
  return parseShaftLine(Object.fromEntries(entries));
}
