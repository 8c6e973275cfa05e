import { describe, expect, it } from 'vitest';
import { getIn, setIn } from '../../../packages/demo/src/model/set-in.js';

const data = { name: 'x', shafts: [{ length: 1 }, { length: 2, supports: [{ at: 0.5 }] }] };

describe('setIn', () => {
  it('changes one value and shares the rest', () => {
    const next = setIn(data, 'shafts[1].supports[0].at', 0.7);
    expect(next).toEqual({ name: 'x', shafts: [{ length: 1 }, { length: 2, supports: [{ at: 0.7 }] }] });
    expect(next.shafts[0]).toBe(data.shafts[0]);
    expect(data.shafts[1]?.supports?.[0]?.at).toBe(0.5);
  });

  it('puts a property in and takes one away', () => {
    expect(setIn(data, 'shafts[0].runout', 0.1).shafts[0]).toEqual({ length: 1, runout: 0.1 });
    expect(Object.keys(setIn(data, 'name', undefined))).toEqual(['shafts']);
  });
});

describe('getIn', () => {
  it('follows a path, also into nothing', () => {
    expect(getIn(data, 'shafts[1].supports[0].at')).toBe(0.5);
    expect(getIn(data, 'shafts[7].supports[0].at')).toBeUndefined();
  });
});
