import { describe, expect, it } from 'vitest';
import { speedSentence } from '../../../packages/demo/src/model/speed-sentence.js';

const RPM = Math.PI / 30;
const shown = { units: 'metric' as const, simulated: false };

describe('speedSentence', () => {
  it('says where the speed comes from', () => {
    const analysis = { speed: 900 * RPM, suggestions: [] };
    expect(speedSentence({ ...analysis, speedFrom: 'given' }, shown)).toBe(
      'Read for 900\u00a0rpm, as you entered it.',
    );
    expect(speedSentence({ ...analysis, speedFrom: 'recording' }, shown)).toContain(
      'the recording itself suggests',
    );
    expect(speedSentence({ ...analysis, speedFrom: 'wanted' }, shown)).toContain('the wanted 900\u00a0rpm');
    expect(speedSentence({ ...analysis, speedFrom: 'given' }, { ...shown, simulated: true })).toBe(
      'Simulated at 900\u00a0rpm.',
    );
  });

  it('speaks up where the recording clearly suggests another speed than the one entered', () => {
    const analysis = { speed: 900 * RPM, speedFrom: 'given' as const };
    const said = (speed: number, confidence: number) =>
      speedSentence({ ...analysis, suggestions: [{ speed: speed * RPM, confidence }] }, shown);
    expect(said(450, 0.8)).toContain('suggests 450\u00a0rpm (80 %); check which is right.');
    expect(said(450, 0.4)).not.toContain('suggests');
    expect(said(905, 0.9)).not.toContain('suggests');
  });
});
