import { BALANCE_SAFETY, compareLines, exampleLine, proposeRemedies } from '@sternline/core';
import type { ComparedCell, ComparisonRow, RecordingComparison } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import {
  balanceSentence,
  massSafety,
  trialMassSentence,
  writeAmplitude,
} from '../../../packages/demo/src/leaves/balance-words.js';
import { trialsSentence, trialsTable } from '../../../packages/demo/src/leaves/compare-trials-words.js';
import {
  changeWords,
  chanceSentence,
  compareSentence,
} from '../../../packages/demo/src/leaves/compare-words.js';
import { remediesSentence } from '../../../packages/demo/src/leaves/remedy-words.js';
import { EMPTY_BALANCE, type BalanceBook } from '../../../packages/demo/src/model/advice.js';
import { walkBalance } from '../../../packages/demo/src/model/balance-walk.js';
import { rethickenShaft } from '../../../packages/demo/src/model/edit-line.js';

const RPM = Math.PI / 30;
const line = exampleLine();
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

describe('words of a balancing', () => {
  const book: BalanceBook = {
    ...EMPTY_BALANCE,
    mass: 0.01,
    runs: {
      found: { amplitude: 8 },
      first: { amplitude: 3.718143 },
      second: { amplitude: 10.143562 },
      third: { amplitude: 12.259019 },
    },
  };
  const say = (changed: BalanceBook) =>
    plain(balanceSentence(walkBalance(changed, line, 300), changed, 'metric'));

  it('name mass and place in one sentence', () => {
    expect(say(book)).toContain('Put on 16 g at 20.0° clockwise from blade 1.');
  });

  it('name the other side where mass is taken off', () => {
    expect(say({ ...book, by: 'removing' })).toContain('Take off 16 g at 200.0° clockwise from blade 1.');
  });

  it('warn of a trial mass far above the advised one', () => {
    expect(trialMassSentence(walkBalance(book, line, 300), 0.01, 'metric')).toContain(
      'make sure of what holds it',
    );
  });

  it('keep the words on holding the mass, the guard and the battery', () => {
    expect(massSafety()).toEqual(BALANCE_SAFETY.slice(1, 4));
    expect(massSafety().join(' ')).toMatch(/cannot fly off.*guard.*battery/s);
  });

  it('write amplitudes with their unit', () => {
    expect(plain(writeAmplitude(0.12345, 'm/s²'))).toBe('0.123 m/s²');
    expect(writeAmplitude(0.5, 'full scale')).toBe('0.5 of full scale');
  });
});

describe('words of a comparison', () => {
  const six = { ...rethickenShaft(line, { shaft: 1, outerDiameter: 0.006 }), name: 'six' };
  const comparison = compareLines([line, six], { speed: 3300 * RPM });

  it('name the one that is clear', () => {
    expect(plain(compareSentence(comparison, 3300 * RPM, 'metric'))).toMatch(
      /^At 3 300 rpm, “six” is clear; the rest is not\. The highest speed limit is that of “six”/,
    );
  });

  it('say plainly where no difference is shown', () => {
    const cell: ComparedCell = { value: 1, change: 0.001, difference: 'none' };
    expect(changeWords(cell, 'ratio', 'metric')).toBe('no difference shown');
    expect(plain(changeWords({ value: 1, change: -10 * RPM, difference: 'worse' }, 'speed', 'metric'))).toBe(
      '10 rpm less, worse',
    );
  });

  it('give chances where measures spread, and nothing where they do not', () => {
    expect(chanceSentence(comparison)).toBe('');
    const lines = comparison.lines.map((one, i) => ({
      ...one,
      chances: i === 0 ? { clear: 0, near: 0, inside: 1 } : { clear: 0.93, near: 0.07, inside: 0 },
    }));
    expect(chanceSentence({ ...comparison, lines })).toContain('“six” is clear in 93 of 100');
  });
});

describe('words of remedies', () => {
  it('name the best worth and the least work', () => {
    const remedies = proposeRemedies(line, { speed: 345.6 });
    const least = remedies.find((remedy) => remedy.least)!;
    const sentence = remediesSentence(remedies, 345.6, 'metric');
    expect(sentence).toContain('gains most for what it takes');
    expect(sentence).toContain(least.kinds.includes('propeller') ? 'propeller of' : least.title.slice(1));
  });

  it('admit that nothing helps', () => {
    expect(plain(remediesSentence([], 100 * RPM, 'metric'))).toBe(
      'Nothing that was tried betters this line at 100 rpm.',
    );
  });
});

describe('words of before and after', () => {
  const side = { amplitude: 1, amplitudeError: 0.01, seen: true };
  const row = (more: Partial<ComparisonRow>): ComparisonRow => ({
    ...{ order: 1, frequency: 60, channel: 'x', unit: 'm/s²', before: side, after: side, ratio: 1 },
    ...{ interval: [0.9, 1.1], decibels: 0, decibelsError: 0.3, verdict: 'no difference shown' },
    ...{ sentence: 'Order 1: no difference shown.' },
    ...more,
  });
  const of = (...rows: ComparisonRow[]): RecordingComparison => ({
    rows,
    speed: { before: 300, after: 300 },
    statements: [],
  });

  it('put the order that moved most first', () => {
    const lower = row({ verdict: 'lower', decibels: -12, sentence: 'Order 1 fell.' });
    const little = row({ order: 2, verdict: 'higher', decibels: 2, sentence: 'Order 2 rose.' });
    expect(trialsSentence(of(little, lower))).toBe('Order 1 fell. Order 2 rose.');
  });

  it('say plainly that nothing is shown', () => {
    expect(trialsSentence(of(row({})))).toBe('No difference shown in any order.');
    expect(trialsSentence(of(row({ withheld: 'speed' })))).toContain('cannot be compared as they are');
  });

  it('hold change, interval and verdict in the table', () => {
    expect(trialsTable(of(row({}))).rows[0]?.slice(3)).toEqual([
      '100 % (90 % to 110 %)',
      'no difference shown',
    ]);
  });
});
