import { describe, expect, it } from 'vitest';
import { motionGrantWords, soundGrantWords } from '../../../packages/demo/src/model/grant-words.js';

const off = { echoCancellation: false, noiseSuppression: false, autoGainControl: false };

describe('soundGrantWords', () => {
  it('says that all is off where all is', () => {
    expect(soundGrantWords({ ...off, sampleRate: 48_000, kept: 'every-sample' })[0]).toBe(
      'Echo cancelling, noise suppression and automatic gain are off, as asked.',
    );
  });

  it('says of each that stayed on what it does to the recording', () => {
    const words = soundGrantWords({
      ...off,
      autoGainControl: true,
      sampleRate: 48_000,
      kept: 'every-sample',
    });
    expect(words[0]).toBe('Echo cancelling and noise suppression are off, as asked.');
    expect(words[1]).toMatch(/^Automatic gain stayed on, .* levels cannot be compared\.$/);
  });

  it('does not take silence of the browser for a grant', () => {
    const words = soundGrantWords({ sampleRate: 44_100, kept: 'compressed' });
    expect(words[0]).toMatch(
      /^This browser does not say whether echo cancelling, noise suppression and automatic gain are off/,
    );
    expect(words[1]).toContain('44\u202f100 samples a second, the browser compresses it');
  });
});

describe('motionGrantWords', () => {
  it('tells the highest speed whose first order stands where it is', () => {
    // 60 samples a second show lines to 30 Hz, which is 1 800 turns a minute.
    expect(motionGrantWords(60)[0]).toContain(
      'up to 30 Hz stand where they are, which is a first order up to 1\u202f800 rpm',
    );
  });
});
