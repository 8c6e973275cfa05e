import { describe, expect, it } from 'vitest';
import { moveWords } from '../../../packages/demo/src/leaves/shim-words.js';

const plain = (text: string) => text.replace(/\u00a0/g, ' ');

describe('moveWords', () => {
  it.each([
    [{ vertical: 0.00045, horizontal: -0.0001 }, 'raise by 0.45 mm, move 0.1 mm to starboard'],
    [{ vertical: -0.0003, horizontal: 0.00025 }, 'lower by 0.3 mm, move 0.25 mm to port'],
    [{ vertical: 0.00001, horizontal: 0 }, 'height as it is, sideways as it is'],
  ])('says which way and how far: %o', (move, words) => {
    expect(plain(moveWords(move, 'metric'))).toBe(words);
  });
});
