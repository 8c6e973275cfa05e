import { describe, expect, it } from 'vitest';
import {
  pushState,
  redo,
  replaceState,
  startHistory,
  undo,
} from '../../../packages/demo/src/model/history.js';

describe('a history', () => {
  const three = pushState(pushState(startHistory('a'), 'b'), 'c');

  it('goes back and forward', () => {
    expect(undo(three).present).toBe('b');
    expect(undo(undo(three)).present).toBe('a');
    expect(redo(undo(undo(three))).present).toBe('b');
    expect(redo(redo(undo(undo(three))))).toEqual(three);
  });

  it('stays where it is at its ends', () => {
    const start = startHistory('a');
    expect(undo(start)).toBe(start);
    expect(redo(three)).toBe(three);
  });

  it('forgets what was undone once something else is done', () => {
    const other = pushState(undo(three), 'd');
    expect(redo(other).present).toBe('d');
    expect(undo(other).present).toBe('b');
  });

  it('takes no step for the same state, and none for a replaced one', () => {
    expect(pushState(three, 'c')).toBe(three);
    expect(undo(replaceState(three, 'z')).present).toBe('b');
  });

  it('keeps two hundred steps', () => {
    let history = startHistory(0);
    for (let step = 1; step <= 500; step++) history = pushState(history, step);
    for (let step = 0; step < 500; step++) history = undo(history);
    expect(history.present).toBe(300);
  });
});
