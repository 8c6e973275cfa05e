import type { Recording } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { channelLevels } from '../../../packages/demo/src/model/channel-levels.js';
import {
  levelSentences,
  levelTable,
  severitySentences,
} from '../../../packages/demo/src/model/level-words.js';
import { severityOf } from '../../../packages/demo/src/model/severity-of.js';

/** 50 Hz at 4 000 Hz: 1.41 m/s² rms is 1.41 / (2π 50) = 4.49 mm/s rms, between 1.8 and 4.5: zone C of class I. */
const recording = {
  name: 'bench',
  sampleRate: 4000,
  channels: [
    {
      name: 'x',
      unit: 'm/s²',
      samples: Float64Array.from(
        { length: 8000 },
        (_, n) => 1.41 * Math.SQRT2 * Math.sin((2 * Math.PI * 50 * n) / 4000),
      ),
    },
  ],
  sampling: { kind: 'motion', gaps: [], clipping: [], duration: 2 },
} as unknown as Recording;

describe('levels in words', () => {
  it('gives rms, and the crest factor and kurtosis that a sine has', () => {
    const [level, shape] = levelSentences(channelLevels(recording));
    expect(level).toBe('On x the level is 1.41 m/s² rms, 1.99 at its highest.');
    expect(shape).toMatch(/^Crest factor 1\.4, kurtosis 1\.5: nothing knocks/);
  });

  it('names blows', () => {
    const blows = Float64Array.from({ length: 8000 }, (_, n) => (n % 400 === 0 ? 10 : 0.1 * Math.sin(n)));
    const knocking = { ...recording, channels: [{ ...recording.channels[0]!, samples: blows }] };
    expect(levelSentences(channelLevels(knocking))[1]).toContain('blows or bursts stand in it');
  });

  it('sets the velocity beside the zones, with their scope', () => {
    const sentences = severitySentences(severityOf(recording)!);
    expect(sentences[0]).toMatch(/^Velocity: 4\.5 mm\/s rms on x, 10 to 1000 Hz: zone C/);
    expect(sentences.join(' ')).toContain('not for models');
    expect(levelTable(channelLevels(recording)).rows[0]!.at(-1)).toBe('4.49');
  });

  it('claims no severity for sound', () => {
    const sound = { ...recording, channels: [{ ...recording.channels[0]!, unit: 'full scale' as const }] };
    expect(severityOf(sound)).toBeUndefined();
  });
});
