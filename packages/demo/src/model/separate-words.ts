import type { SeparatedLine } from '@sternline/core';
import { shortFigure } from './short-figure.js';

/**
 * What a second speed tells of each line of a recording, in sentences, the strongest first.
 *
 * @param lines - as the core gives them
 */
export function separatedSentences(lines: readonly SeparatedLine[]): string[] {
  const sorted = [...lines].sort((a, b) => b.amplitude - a.amplitude).slice(0, 6);
  if (sorted.length === 0) return ['No line stands above the noise here.'];
  return sorted.map(
    (line) => `The line at ${shortFigure(line.frequency)} Hz on ${line.channel} ${verdict(line)}.`,
  );
}

function verdict({ is, folded, couldBe, remains }: SeparatedLine): string {
  if (is === 'fixed') return 'does not follow the shaft: it is something that rings, or another machine';
  if (is !== undefined) {
    const height = folded ? '; it is folded down, and its height is not to be relied on' : '';
    const doubt =
      couldBe.length > 1 ? `, which one speed alone would not have told from ${others(couldBe, is)}` : '';
    return `is order ${is}${doubt}${height}`;
  }
  if (remains.length === 0) return 'is explained by nothing that both recordings show';
  return `may still be ${names(remains)}: record a third speed`;
}

function others(all: readonly (number | 'fixed')[], is: number): string {
  return names(all.filter((one) => one !== is));
}

function names(all: readonly (number | 'fixed')[]): string {
  const words = all.map((one) =>
    one === 'fixed' ? 'something that does not follow the shaft' : `order ${one}`,
  );
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} or ${last}`;
}
