import type { Diagnosis } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { answerSentence } from '../../../packages/demo/src/model/answer-sentence.js';

const peak = {
  channel: 'x',
  unit: 'm/s²',
  frequency: 9,
  frequencyError: 0,
  amplitude: 1,
  amplitudeError: 0,
  floor: 0,
  prominence: 20,
};
const bare: Diagnosis = { orders: [], peaks: [], findings: [], limits: [] };

describe('answerSentence', () => {
  it('says the strongest finding with its confidence in words and figures', () => {
    const findings = [
      {
        cause: 'unbalance' as const,
        confidence: 0.752,
        evidence: [],
        nextCheck: '',
        outcomes: [],
        rivals: [],
      },
    ];
    expect(answerSentence({ ...bare, findings })).toBe(
      'Something that turns is out of balance: probably (75 %).',
    );
  });

  it('does not call a recording silent that has lines without a cause', () => {
    expect(answerSentence({ ...bare, peaks: [peak] })).toBe(
      'One line stands above the noise, but none points to a cause at this speed.',
    );
    expect(answerSentence(bare)).toBe('Nothing in this recording stands above its noise.');
  });
});
