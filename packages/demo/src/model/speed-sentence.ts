import type { TrialAnalysis } from './analysis-types.js';
import type { Units } from './project.js';
import { formatFigure } from './units.js';

/** From here on a suggestion is worth a word against the speed that the builder entered. */
const STRONG = 0.65;
/** Share by which speeds must differ to be worth a word. */
const APART = 0.03;

/**
 * At which speed a recording was read, and how far that is to be trusted.
 *
 * @param analysis - with its speed and what the recording suggests
 * @param shown - units of the page; whether the trial was `simulated`
 * @returns one or two sentences
 */
export function speedSentence(
  analysis: Pick<TrialAnalysis, 'speed' | 'speedFrom' | 'suggestions'>,
  shown: { readonly units: Units; readonly simulated: boolean },
): string {
  const speed = formatFigure(analysis.speed, 'speed', shown.units);
  switch (analysis.speedFrom) {
    case 'given':
      if (shown.simulated) return `Simulated at ${speed}.`;
      return `Read for ${speed}, as you entered it.${objection(analysis, shown.units)}`;
    case 'recording':
      return `Read for ${speed}, which the recording itself suggests: confirm it or put in the speed you know.`;
    case 'wanted':
      return `Read for the wanted ${speed}, since the recording does not tell its speed clearly: put in the speed you know.`;
  }
}

function objection(analysis: Pick<TrialAnalysis, 'speed' | 'suggestions'>, units: Units): string {
  const [best] = analysis.suggestions;
  if (!best || best.confidence < STRONG || Math.abs(best.speed / analysis.speed - 1) < APART) return '';
  const suggested = formatFigure(best.speed, 'speed', units);
  return ` The recording itself suggests ${suggested} (${Math.round(best.confidence * 100)} %); check which is right.`;
}
