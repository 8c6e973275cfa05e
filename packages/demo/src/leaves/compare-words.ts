import type { ComparedCell, LineComparison, Quantity } from '@sternline/core';
import type { Units } from '../model/project.js';
import { say } from '../model/say.js';
import { formatFigure } from '../model/units.js';

/**
 * What a comparison comes to, in a sentence or two.
 *
 * @param comparison - two or more layouts
 * @param speed - rad/s, the wanted speed
 * @param units - metric or inch
 */
export function compareSentence(
  { lines, rows, summary }: LineComparison,
  speed: number,
  units: Units,
): string {
  const wanted = formatFigure(speed, 'speed', units);
  const clear = lines.filter(({ verdict }) => verdict === 'clear').map(({ name }) => name);
  if (clear.length !== 1) {
    const opening =
      clear.length === 0
        ? `None of these is clear at ${wanted}.`
        : clear.length === lines.length
          ? `All of these are clear at ${wanted}.`
          : `At ${wanted}, ${listNames(clear)} are clear; the rest ${restIs(lines.length - clear.length)} not.`;
    return `${opening} ${say(summary, units)}`;
  }
  const opening = `At ${wanted}, ${listNames(clear)} is clear; the rest ${restIs(lines.length - 1)} not.`;
  const limits = rows.find(({ key }) => key === 'speed-limit');
  const [best] = limits?.best ?? [];
  const limit = best === undefined ? undefined : limits?.cells[best]?.value;
  if (best === undefined || limit === undefined || !Number.isFinite(limit)) return opening;
  return `${opening} The highest speed limit is that of “${lines[best]?.name ?? ''}”, ${formatFigure(limit, 'speed', units)}.`;
}

function restIs(count: number): string {
  return count === 1 ? 'is' : 'are';
}

/** How sure the verdicts are, given how far the measures may be off; empty where nothing spreads. */
export function chanceSentence({ lines }: LineComparison): string {
  const told = lines.flatMap(({ name, chances }) => (chances ? [{ name, clear: chances.clear }] : []));
  if (told.length === 0) return '';
  const sure = told.filter(({ clear }) => clear > 0.995).map(({ name }) => name);
  const never = told.filter(({ clear }) => clear < 0.005).length;
  const doubtful = told.filter(({ clear }) => clear >= 0.005 && clear <= 0.995);
  const parts = [
    ...(sure.length > 0 ? [`${listNames(sure)} ${sure.length === 1 ? 'stays' : 'stay'} clear`] : []),
    ...doubtful.map(({ name, clear }) => `“${name}” is clear in ${Math.round(100 * clear)} of 100`),
    ...(never === told.length ? ['none of these is ever clear'] : []),
  ];
  return parts.length === 0 ? '' : `With measures off by as much as stated, ${parts.join('; ')}.`;
}

/** The change of a figure against the first layout, or that none is shown. */
export function changeWords({ change, difference }: ComparedCell, quantity: Quantity, units: Units): string {
  if (difference === 'unknown' || change === undefined) return '';
  if (difference === 'none') return 'no difference shown';
  if (!Number.isFinite(change)) return difference;
  return `${formatFigure(Math.abs(change), quantity, units)} ${change > 0 ? 'more' : 'less'}, ${difference}`;
}

/** Names in quotes, in a row. */
export function listNames(names: readonly string[]): string {
  const quoted = names.map((name) => `“${name}”`);
  if (quoted.length < 2) return quoted.join('');
  return `${quoted.slice(0, -1).join(', ')} and ${quoted.at(-1) ?? ''}`;
}
