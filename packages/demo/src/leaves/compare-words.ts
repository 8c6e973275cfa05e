import type { Comparison } from '../model/compare-layouts.js';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';

/**
 * What a comparison comes to, in a sentence or two.
 *
 * @param comparison - two or more layouts
 * @param speed - rad/s, the wanted speed
 * @param units - metric or inch
 */
export function compareSentence(
  { names, assessments, figures }: Comparison,
  speed: number,
  units: Units,
): string {
  const wanted = formatFigure(speed, 'speed', units);
  const clear = names.filter((_, index) => assessments[index]?.verdict === 'clear');
  const limits = figures[0]?.values ?? [];
  const best = limits.reduce<number>(
    (leader, value, index) => ((value ?? -1) > (limits[leader] ?? -1) ? index : leader),
    0,
  );
  const opening =
    clear.length === 0
      ? `None of these is clear at ${wanted}.`
      : clear.length === names.length
        ? `All of these are clear at ${wanted}.`
        : `At ${wanted}, ${list(clear)} ${clear.length === 1 ? 'is' : 'are'} clear; the rest ${names.length - clear.length === 1 ? 'is' : 'are'} not.`;
  const limit = limits[best];
  if (limit === undefined || !Number.isFinite(limit)) return opening;
  return `${opening} The highest speed limit is that of “${names[best] ?? ''}”, ${formatFigure(limit, 'speed', units)}.`;
}

function list(names: readonly string[]): string {
  const quoted = names.map((name) => `“${name}”`);
  if (quoted.length < 2) return quoted.join('');
  return `${quoted.slice(0, -1).join(', ')} and ${quoted.at(-1) ?? ''}`;
}
