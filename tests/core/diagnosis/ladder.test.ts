import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  answerLadder,
  exampleLine,
  nextTrial,
  startLadder,
  type Cause,
  type LadderOutcome,
  type LadderState,
  type LadderTest,
} from '@sternline/core';
import { CAUSE_BEHAVIOUR } from '../../../packages/core/src/diagnosis/cause-behaviour.js';
import { LADDER_TESTS } from '../../../packages/core/src/diagnosis/ladder-tests.js';
import { createRandom } from '../../../packages/core/src/numerics/random.js';
import { makeRecording } from '../../support/recordings.js';

const CAUSES = Object.keys(CAUSE_BEHAVIOUR) as Cause[];
const TESTS = Object.keys(LADDER_TESTS) as LadderTest[];
const sum = (values: readonly number[]): number => values.reduce((total, x) => total + x, 0);

/** Entropy in bits, written anew from its definition. */
const entropy = (state: LadderState): number =>
  -sum(state.causes.map(({ chance }) => (chance > 0 ? chance * Math.log2(chance) : 0)));

describe('the table', () => {
  it.each(TESTS)('%s: likelihoods of each cause sum to 1 and none is negative', (test) => {
    for (const cause of CAUSES) {
      const likelihood = LADDER_TESTS[test].likelihood(cause);
      expect(likelihood).toHaveLength(LADDER_TESTS[test].outcomes.length);
      expect(sum(likelihood)).toBeCloseTo(1, 9);
      expect(Math.min(...likelihood)).toBeGreaterThanOrEqual(0);
    }
  });

  it.each(TESTS)('%s: has safety words, and says how long it takes', (test) => {
    expect(LADDER_TESTS[test].caution).toMatch(/battery|Hold the model fast/);
    expect(LADDER_TESTS[test].minutes).toBeGreaterThan(0);
    if (/hex key|spanner|sleeve|glass/.test(LADDER_TESTS[test].tools.join()))
      expect(LADDER_TESTS[test].caution).toContain('Take the battery out');
  });
});

describe('safety', () => {
  it('touches panels with the drive stopped, and then passes through the speed that shakes', () => {
    const { instruction, caution } = LADDER_TESTS['press-panels'];
    expect(instruction).toMatch(/^With the drive stopped, weight or wedge/);
    expect(instruction).toContain('pass through the speed that shakes within seconds');
    expect(instruction).not.toMatch(/Run at the speed that shakes/);
    expect(caution).toContain('do not dwell at a speed that shakes');
  });
});

describe('answers', () => {
  it('keep the chances a distribution, and do not depend on their order', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(TESTS, { minLength: 2, maxLength: 5 }), fc.nat(1000), (tests, seed) => {
        const random = createRandom(seed);
        const answers = tests.map((test) => {
          const { outcomes } = LADDER_TESTS[test];
          return { test, outcome: outcomes[Math.floor(random.uniform() * outcomes.length)]!.outcome };
        });
        const [one, other] = [answers, [...answers].reverse()].map((done) => startLadder({ done }));
        expect(sum(one!.causes.map(({ chance }) => chance))).toBeCloseTo(1, 9);
        for (const { cause, chance } of one!.causes) {
          expect(other!.causes.find((c) => c.cause === cause)!.chance).toBeCloseTo(chance, 9);
        }
      }),
      { numRuns: 50 },
    );
  });

  it('follow Bayes’ rule: chance after over chance before goes with the likelihood', () => {
    const before = startLadder();
    const after = answerLadder(before, { test: 'joint-turned', outcome: 'changes' });
    const ratio = (cause: Cause): number =>
      after.causes.find((c) => c.cause === cause)!.chance /
      before.causes.find((c) => c.cause === cause)!.chance;
    // derived: the two likelihoods of the table, 0.85 and 0.06
    expect(ratio('misalignment') / ratio('unbalance')).toBeCloseTo(0.85 / 0.06, 9);
  });

  it('leave the state that they are given as it was', () => {
    const before = startLadder();
    const copy = structuredClone(before);
    answerLadder(before, { test: 'propeller-off', outcome: 'stays' });
    expect(before).toEqual(copy);
  });

  it('survive being stored and taken up again', () => {
    const state = startLadder({ done: [{ test: 'propeller-off', outcome: 'stays' }] });
    expect(nextTrial(JSON.parse(JSON.stringify(state)) as LadderState)).toEqual(nextTrial(state));
  });

  it('can be read from recordings before and after', () => {
    const recording = (amplitude: number, seed: number) =>
      makeRecording({
        sampleRate: 200,
        seconds: 5,
        channels: [{ components: [{ amplitude, frequency: 30 }] }],
        noise: 0.02,
        seed,
      });
    const speed = 2 * Math.PI * 30;
    const before = { recording: recording(1, 1), speed };
    const gone = answerLadder(startLadder(), {
      test: 'propeller-off',
      before,
      after: { recording: recording(0.1, 2), speed },
    });
    expect(gone.causes[0]!.cause).toBe('unbalance');
    expect(gone.steps[0]!.outcomes[0]).toMatchObject({ outcome: 'goes' });
    expect(gone.steps[0]!.outcomes[0]!.chance).toBeGreaterThan(0.9);
    // derived: 0.8² of the amplitude at 0.8 of the speed is a slope of 2
    const slower = answerLadder(startLadder(), {
      test: 'run-slower',
      before,
      after: { recording: recording(0.64, 3), speed: 0.8 * speed },
    });
    const likeliest = [...slower.steps[0]!.outcomes].sort((a, b) => b.chance - a.chance)[0]!;
    expect(likeliest.outcome).toBe('falls with the square');
  });
});

describe('nextTrial', () => {
  it('promises the gain that entropy before and after gives, and never a loss', () => {
    const state = startLadder({ line: exampleLine() });
    const { trial, others } = nextTrial(state);
    for (const one of [trial!, ...others]) {
      expect(sum(one.outcomes.map(({ chance }) => chance))).toBeCloseTo(1, 9);
      const after = one.outcomes.map(
        ({ outcome, chance }) => chance * entropy(answerLadder(state, { test: one.test, outcome })),
      );
      expect(one.gain).toBeCloseTo(entropy(state) - sum(after), 9);
      expect(one.gain).toBeGreaterThan(0);
    }
  });

  it('never asks twice, nor for what the line has not', () => {
    let state = startLadder({ line: { ...exampleLine(), joints: [], shafts: [exampleLine().shafts[1]!] } });
    for (;;) {
      const { trial } = nextTrial(state);
      if (trial === undefined) break;
      expect(state.steps.map(({ test }) => test)).not.toContain(trial.test);
      expect([
        'joint-turned',
        'motor-alone',
        'motor-and-joint',
        'align-with-sleeve',
        'halve-angle',
      ]).not.toContain(trial.test);
      state = answerLadder(state, { test: trial.test, outcome: trial.outcomes.at(-1)!.outcome });
    }
    expect(state.steps.length).toBeGreaterThan(2);
  });

  it('concludes with its reasons, and not before', () => {
    expect(nextTrial(startLadder()).conclusion).toBeUndefined();
    const state = startLadder({
      done: [
        { test: 'propeller-off', outcome: 'stays' },
        { test: 'joint-turned', outcome: 'stays' },
        { test: 'roll-shaft', outcome: 'found' },
        { test: 'run-slower', outcome: 'falls slower' },
      ],
    });
    const { conclusion } = nextTrial(state);
    expect(conclusion!.cause).toBe('bent-shaft');
    expect(conclusion!.reasons).toHaveLength(4);
    expect(conclusion!.reasons[2]).toContain('Seen: found. The shaft is bent');
    expect(conclusion!.fixes[0]).toBe('Straighten the shaft.');
  });

  /** A helper who answers by the table: the hidden cause is found, and found sooner than by going down a fixed list. */
  it('finds a hidden cause with less work than the fixed order of builders', () => {
    const search = (guided: 'guided' | 'fixed', seed: number): { minutes: number; right: boolean } => {
      const random = createRandom(seed);
      const hidden = (
        [
          'unbalance',
          'bent-shaft',
          'joint-angle',
          'misalignment',
          'looseness',
          'rubbing',
          'electrical',
        ] as const
      )[Math.floor(7 * random.uniform())]!;
      const list: LadderTest[] = [
        'motor-alone',
        'motor-and-joint',
        'propeller-off',
        'in-water',
        'run-slower',
        'joint-turned',
        'tighten-screws',
        'turn-by-hand',
        'roll-shaft',
        'align-with-sleeve',
        'halve-angle',
        'other-propeller',
        'propeller-turned',
        'press-panels',
        'drive-still',
      ];
      let [state, minutes] = [startLadder(), 0];
      for (;;) {
        const { trial, others, conclusion } = nextTrial(state);
        const next = guided === 'guided' ? trial : [trial, ...others].find((one) => one?.test === list[0]);
        if (guided === 'fixed') list.shift();
        if (conclusion) return { minutes, right: conclusion.cause === hidden };
        if (trial === undefined || (guided === 'fixed' && list.length === 0)) {
          return { minutes, right: state.causes[0]!.cause === hidden };
        }
        if (next === undefined) continue;
        minutes += next.takes.minutes;
        state = answerLadder(state, { test: next.test, outcome: drawn(next.test, hidden, random.uniform()) });
      }
    };
    const run = (guided: 'guided' | 'fixed') => Array.from({ length: 200 }, (_, i) => search(guided, 40 + i));
    const [guided, fixed] = [run('guided'), run('fixed')];
    const rate = (all: typeof guided): number => sum(all.map(({ right }) => Number(right))) / all.length;
    const work = (all: typeof guided): number => sum(all.map(({ minutes }) => minutes)) / all.length;
    expect(rate(guided)).toBeGreaterThan(0.75);
    expect(rate(guided)).toBeGreaterThanOrEqual(rate(fixed) - 0.05);
    expect(work(guided)).toBeLessThan(work(fixed));
  });
});

function drawn(test: LadderTest, hidden: Cause, chance: number): LadderOutcome {
  let left = chance;
  const likelihood = LADDER_TESTS[test].likelihood(hidden);
  const at = likelihood.findIndex((share) => (left -= share) < 0);
  return LADDER_TESTS[test].outcomes[at < 0 ? likelihood.length - 1 : at]!.outcome;
}

describe('refusals', () => {
  const state = startLadder({ done: [{ test: 'propeller-off', outcome: 'goes' }] });
  it('a test done twice', () => {
    expect(() => answerLadder(state, { test: 'propeller-off', outcome: 'goes' })).toThrow(
      new RangeError('answerLadder: test must be one that was not done yet, got "propeller-off"'),
    );
  });
  it('an outcome that the test cannot have', () => {
    expect(() => answerLadder(state, { test: 'roll-shaft', outcome: 'goes' })).toThrow(
      new RangeError('answerLadder: outcome must be one of found, not found, got "goes"'),
    );
  });
  it('a test that does not exist', () => {
    expect(() => answerLadder(state, { test: 'pray' as LadderTest, outcome: 'goes' })).toThrow(
      /^answerLadder: test must be tighten-screws, .*, got "pray"$/,
    );
  });
  it('recordings of a test that is not run', () => {
    const recording = makeRecording({ sampleRate: 100, seconds: 2, channels: [{}], noise: 1, seed: 1 });
    const trial = { recording, speed: 100 };
    expect(() => answerLadder(state, { test: 'roll-shaft', before: trial, after: trial })).toThrow(
      new RangeError(
        'answerLadder: test must be one that is run, to be read from recordings, got "roll-shaft"',
      ),
    );
  });
});
