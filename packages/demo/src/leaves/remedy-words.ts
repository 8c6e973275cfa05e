import type { Destructive, Remedy } from '@sternline/core';
import type { Units } from '../model/project.js';
import { say } from '../model/say.js';
import { formatFigure } from '../model/units.js';

/**
 * What would change a line most, in a sentence or two.
 *
 * @param remedies - as the core ranks them
 * @param speed - rad/s, the wanted speed
 * @param units - metric or inch
 */
export function remediesSentence(remedies: readonly Remedy[], speed: number, units: Units): string {
  const at = formatFigure(speed, 'speed', units);
  const helping = remedies.filter(({ helps }) => helps);
  const [best] = helping;
  if (!best) return `Nothing that was tried betters this line at ${at}.`;
  const least = helping.find((remedy) => remedy.least);
  const opening = `${ranked(best)} gains most for what it takes: ${lower(say(best.heading, units))}.`;
  if (!least) return opening;
  if (least === best) return `${opening} It is also the least work that leaves the line clear at ${at}.`;
  return `${opening} The least work that leaves it clear at ${at}: ${lower(say(least.heading, units))}.`;
}

function ranked({ kinds }: Remedy): string {
  return kinds.length > 1 ? 'A pair of changes' : 'One change';
}

/** A heading inside a sentence. */
export function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

const CUTS: Readonly<Record<Destructive, string>> = {
  no: 'nothing is cut',
  reversible: 'it can be put back',
  cutting: 'material is cut, or the hull opened',
};

/** What a remedy takes: the steps of the work, what to buy, and how much of each. */
export function costWords(
  { costs }: Remedy,
  units: Units,
): { readonly takes: string; readonly scale: string } {
  const { takes, buy, work, money, destructive } = costs;
  const steps = takes.map((step) => say(step, units)).join('; ');
  const bought = buy.length > 0 ? ` To buy: ${buy.map((one) => say(one, units)).join('; ')}.` : '';
  return {
    takes: `${steps.charAt(0).toUpperCase()}${steps.slice(1)}.${bought}`,
    scale: `Work ${work}, money ${money}; ${CUTS[destructive]}.`,
  };
}

/** What one press does with a remedy. */
export function adoptWords({ kinds, speed }: Remedy, units: Units): string {
  return kinds.includes('speed') ? `Want ${formatFigure(speed, 'speed', units)}` : 'Adopt as a new layout';
}
