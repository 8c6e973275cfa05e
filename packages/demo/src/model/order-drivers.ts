import type { ShaftLine } from '@sternline/core';

/**
 * What usually drives an order of this line.
 *
 * @param order - multiple of shaft speed
 * @param line - the line, where it is known
 * @returns a word or two; empty where nothing in particular does
 */
export function orderDriver(order: number, line: ShaftLine | undefined): string {
  const drivers: string[] = [];
  if (order === 1) drivers.push('unbalance, bend');
  if (order === 2 && line?.joints.some((joint) => joint.kind === 'universal')) drivers.push('joints');
  if (line?.propeller?.blades === order) drivers.push('blades');
  return drivers.join(', ');
}
