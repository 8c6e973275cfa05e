import { exampleLine, parseShaftLine, ShaftLineError, type LineFault } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { faultWords, partOfPath } from '../../../packages/demo/src/model/fault-words.js';
import { setIn } from '../../../packages/demo/src/model/set-in.js';

function faultOf(path: string, value: unknown): LineFault {
  try {
    parseShaftLine(setIn(exampleLine(), path, value));
  } catch (error) {
    if (error instanceof ShaftLineError && error.faults[0]) return error.faults[0];
  }
  throw new Error(`${path} was not refused`);
}

describe('faultWords', () => {
  it.each([
    [
      'shafts[1].innerDiameter',
      0.006,
      'metric',
      "Must be less than 5\u00a0mm (the shaft's outer diameter), not 6\u00a0mm.",
    ],
    [
      'shafts[1].innerDiameter',
      0.006,
      'inch',
      "Must be less than 0.197\u00a0in (the shaft's outer diameter), not 0.236\u00a0in.",
    ],
    [
      'shafts[1].supports[1].at',
      0.4,
      'metric',
      "Must be from 0\u00a0mm to 376\u00a0mm (the shaft's length), not 400\u00a0mm.",
    ],
    [
      'motor.speedConstant',
      -1,
      'metric',
      'Must be a speed constant greater than 0\u00a0rpm/V, not −9.55\u00a0rpm/V.',
    ],
    ['shafts[1].length', NaN, 'metric', 'Has no value that can be used.'],
  ] as const)('says what is wrong with %s = %d in %s units', (path, value, units, words) => {
    expect(faultWords(faultOf(path, value), units)).toBe(words);
  });
});

describe('partOfPath', () => {
  it.each([
    ['shafts[1].supports[0].at', 'support-1-0'],
    ['shafts[1].discs[2].mass', 'disc-1-2'],
    ['shafts[0].length', 'shaft-0'],
    ['joints[1].kind', 'joint-1'],
    ['motor.resistance', 'motor'],
    ['supply.voltage', 'motor'],
    ['propeller.pitch', 'propeller'],
    ['joints', undefined],
  ])('finds the part of %s', (path, part) => {
    expect(partOfPath(path)).toBe(part);
  });
});
