import { describe, expect, it } from 'vitest';
import { say } from '../../../packages/demo/src/model/say.js';

describe('say', () => {
  const statement = {
    template: 'At {speed} the {length} shaft is {unknown}.',
    figures: {
      speed: { value: 100 * Math.PI, quantity: 'speed' },
      length: { value: 0.254, quantity: 'length' },
    },
    sentence: '',
  } as const;

  it('puts each figure in the reader’s units and leaves what it does not know', () => {
    expect(say(statement, 'metric')).toBe('At 3\u202f000\u00a0rpm the 254\u00a0mm shaft is {unknown}.');
    expect(say(statement, 'inch')).toBe('At 3\u202f000\u00a0rpm the 10\u00a0in shaft is {unknown}.');
  });
});
