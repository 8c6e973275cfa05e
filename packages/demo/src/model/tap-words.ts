import type { TapTest } from '@sternline/core';
import { shortFigure } from './short-figure.js';

/** What a recording of taps says, and what is predicted for the line. */
export type TapOutcome =
  | {
      readonly kind: 'rang';
      readonly tap: TapTest;
      /** Hz, bending frequencies of the line at rest, lowest first; empty where they are not known. */
      readonly predicted: readonly number[];
    }
  | { readonly kind: 'silent' };

/** Share by which a prediction may be off and still be the same ring: how firmly bushes hold is the largest unknown. */
const NEAR = 0.25;

/**
 * What a tap test found, in sentences: frequency, damping, how far to trust them, and the prediction beside them.
 *
 * @param outcome - of reading the ringing
 */
export function tapSentences(outcome: TapOutcome): string[] {
  if (outcome.kind === 'silent') return [SILENT];
  const { tap, predicted } = outcome;
  const { frequency, frequencyError, damping, dampingError, taps, channel, agreement } = tap;
  const count = taps.length === 1 ? 'one tap' : `${taps.length} taps`;
  return [
    `It rings at ${shortFigure(frequency)} Hz (± ${shortFigure(frequencyError, 1)}), damped by ${shortFigure(100 * damping, 2)} % of critical (± ${shortFigure(100 * dampingError, 1)}), on ${channel}, from ${count}.`,
    agreement === 'agree'
      ? `Decrement and fit agree: ${methods(tap)}.`
      : `Decrement and fit differ (${methods(tap)}): two parts ring at once, or something held it. Tap again, elsewhere.`,
    ...predictionSentences(frequency, predicted),
    ...tap.notes,
  ];
}

const SILENT =
  'No tap in it rings for three periods above the noise. Tap harder with something hard, lay the phone nearer, and let each tap ring out.';

function methods({ byDecrement, byFit }: TapTest): string {
  const [a, b] = [byDecrement, byFit].map(
    ({ frequency, damping }) => `${shortFigure(frequency)} Hz and ${shortFigure(100 * damping, 2)} %`,
  );
  return `${a ?? ''} by the one, ${b ?? ''} by the other`;
}

function predictionSentences(frequency: number, predicted: readonly number[]): string[] {
  if (predicted.length === 0) return [];
  const nearest = predicted.reduce((best, one) =>
    Math.abs(one - frequency) < Math.abs(best - frequency) ? one : best,
  );
  const list = predicted.map((one) => shortFigure(one)).join(', ');
  const off = Math.round(100 * (frequency / nearest - 1));
  return [
    `The line as entered is predicted to bend at rest at ${list} Hz.`,
    Math.abs(off) <= 100 * NEAR
      ? `The ring lies ${off === 0 ? 'on' : `${Math.abs(off)} % ${off > 0 ? 'above' : 'below'}`} ${shortFigure(nearest)} Hz: it may well be that one, and then “Fit the line to what was measured” below tells how firmly the bushes hold.`
      : 'None of them is near: the ring is rather of the hull, a bracket or the tube, or the bushes hold quite otherwise than entered.',
  ];
}
