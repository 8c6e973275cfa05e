import { describe, expect, it } from 'vitest';
import {
  durationWords,
  listWords,
  resolutionSentence,
} from '../../../packages/demo/src/model/reading-words.js';

describe('durationWords', () => {
  it.each([
    [2, '2.00 s'],
    [30.04, '30.0 s'],
    [508.6, '8 min 29 s'],
    [119.7, '2 min 0 s'],
  ])('says %f as %s', (seconds, words) => {
    expect(durationWords(seconds)).toBe(words);
  });
});

describe('listWords', () => {
  it('joins words as people do', () => {
    expect(listWords(['x'])).toBe('x');
    expect(listWords(['x', 'y', 'z'])).toBe('x, y and z');
  });
});

describe('resolutionSentence', () => {
  it('states line spacing and averages, or that there are none', () => {
    expect(resolutionSentence({ segmentLength: 512, step: 0.397, overlap: 0.5, segments: 21 })).toBe(
      'Lines 0.4 Hz apart, averaged over 21 half-overlapping pieces.',
    );
    expect(resolutionSentence({ segmentLength: 512, step: 10, overlap: 0.5, segments: 1 })).toContain(
      'nothing is averaged',
    );
  });
});
