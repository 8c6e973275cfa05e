import { describe, expect, it } from 'vitest';
import { alignmentSentence, partOnOther } from '../../../packages/demo/src/model/alignment-words.js';
import { separatedSentences } from '../../../packages/demo/src/model/separate-words.js';
import { tapSentences } from '../../../packages/demo/src/model/tap-words.js';
import { levelWords } from '../../../packages/demo/src/model/meter-words.js';
import type { Trial } from '../../../packages/demo/src/model/project.js';

const other = { recording: { sampling: { duration: 10 } } } as Trial;
const alignment = {
  offset: 1.5,
  offsetError: 0.002,
  drift: 0,
  driftError: 0,
  from: 'marks',
  marks: 3,
  confidence: 0.9,
} as const;

describe('two recordings on one clock', () => {
  it('says which began later and how that was told', () => {
    const sentence = alignmentSentence({ kind: 'aligned', alignment }, { trial: 'sound', other: 'motion' });
    expect(sentence).toBe('“motion” began 1.50 s after “sound” (± 0.002 s), by 3 taps that both heard.');
  });

  it('carries a stretch over, as far as the other recording goes', () => {
    expect(partOnOther({ from: 1, to: 5 }, alignment, other)).toEqual({ from: 0, to: 3.5 });
    expect(partOnOther({ from: 20, to: 30 }, alignment, other)).toBeUndefined();
  });
});

describe('separatedSentences', () => {
  const line = { frequency: 33.3, amplitude: 1, channel: 'x', folded: true };

  it('names the order that both speeds bear out, and what one speed left open', () => {
    const [sentence] = separatedSentences([{ ...line, is: 2, couldBe: [1, 2, 'fixed'], remains: [2] }]);
    expect(sentence).toContain('it is folded down, and its height is not to be relied on');
    expect(sentence).toContain(
      'is order 2, which one speed alone would not have told from order 1 or something that does not follow the shaft',
    );
  });

  it('does not decide where both remain', () => {
    const [sentence] = separatedSentences([{ ...line, is: undefined, couldBe: [1, 2], remains: [1, 2] }]);
    expect(sentence).toContain('may still be order 1 or order 2');
  });
});

describe('tapSentences', () => {
  const reading = { frequency: 120, frequencyError: 0.2, damping: 0.012, dampingError: 0.001 };
  const tap = {
    ...reading,
    channel: 'z',
    byDecrement: reading,
    byFit: reading,
    agreement: 'agree',
    taps: [1, 3, 5],
    notes: [],
  } as const;

  it('sets the ring beside the nearest prediction', () => {
    const said = tapSentences({ kind: 'rang', tap, predicted: [125, 480] }).join(' ');
    expect(said).toContain('It rings at 120 Hz (± 0.2), damped by 1.2 % of critical');
    // 120 against 125 is 4 % below.
    expect(said).toContain('The ring lies 4 % below 125 Hz');
  });

  it('does not force a prediction on a ring far from it', () => {
    expect(tapSentences({ kind: 'rang', tap, predicted: [480] }).join(' ')).toContain('None of them is near');
  });
});

describe('levelWords', () => {
  it('warns of what is cut off and of what is too faint', () => {
    expect(levelWords('sound', 1).words).toContain('cut off');
    expect(levelWords('sound', 0.0001).words).toContain('faint');
    expect(levelWords('sound', 0)).toEqual({ share: 0, words: 'very faint: move the phone nearer' });
    // −30 dB is half of a meter that begins at −60 dB.
    expect(levelWords('sound', 10 ** -1.5).share).toBeCloseTo(0.5, 6);
  });
});
