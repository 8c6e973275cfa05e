import { describe, expect, it } from 'vitest';
import { exampleLine } from '@sternline/core';
import { numberAt } from '../../../packages/core/src/line/number-at.js';

describe('numberAt', () => {
  const line = exampleLine();

  it('reads and changes one number and leaves the line given alone', () => {
    const at = numberAt('shafts[1].supports[0].at');
    const before = at.read(line);
    const changed = at.write(line, before + 0.001);
    expect(at.read(changed)).toBe(before + 0.001);
    expect(at.read(line)).toBe(before);
    expect(changed.shafts[0]).toBe(line.shafts[0]);
    expect(changed.shafts[1]!.supports[1]).toBe(line.shafts[1]!.supports[1]);
    expect(Array.isArray(changed.shafts)).toBe(true);
  });

  it('refuses a path that leads to no number, and says which', () => {
    expect(() => numberAt('shafts[9].length').read(line)).toThrow(
      'numberAt: shafts[9].length must lead to a number of the line, got undefined',
    );
    expect(() => numberAt('name').write(line, 1)).toThrow(
      'numberAt: name must lead to a number of the line, got "Port line, one joint, 5 mm"',
    );
  });
});
