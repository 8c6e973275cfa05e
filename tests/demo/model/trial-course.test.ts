import { exampleLine, simulateTrial } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { courseOrders } from '../../../packages/demo/src/model/course-orders.js';
import { courseSentences, runAnswer } from '../../../packages/demo/src/model/course-words.js';
import { runLines } from '../../../packages/demo/src/model/run-lines.js';
import { trialCourse } from '../../../packages/demo/src/model/trial-course.js';

const RPM = Math.PI / 30;
const line = exampleLine();
const wantedSpeed = 3300 * RPM;
const run = simulateTrial(line, {
  duration: 16,
  sampleRate: 400,
  seed: 3,
  hullMass: 1.5,
  speed: [
    { time: 1, speed: 900 * RPM },
    { time: 15, speed: 3600 * RPM },
  ],
}).recording;

describe('trialCourse', () => {
  it('follows a run-up, and speaks of the run and not of one speed', () => {
    const course = trialCourse(run, { wantedSpeed, readAt: wantedSpeed, line });
    expect(course.moved).toBe(true);
    const speed = course.track!.speed;
    // The truth is what was put into the simulation.
    expect(Math.abs(speed.at(-1)! / RPM - 3600)).toBeLessThan(40);
    expect(runAnswer(course, 'metric')).toMatch(
      /^The shaft speed moved from [\d\u202f]+\u00a0rpm to 3\u202f6\d0\u00a0rpm/,
    );
    expect(courseSentences(course, 'metric')[0]).toContain('drag over a stretch of steady running');
  });

  it('puts the track on the clock of the whole where only a part is read', () => {
    const part = { from: 6, to: 16 };
    const course = trialCourse(run, { wantedSpeed, readAt: wantedSpeed, line, part });
    expect(course.track!.time[0]).toBeGreaterThanOrEqual(6);
    expect(course.track!.time.at(-1)).toBeLessThanOrEqual(16);
  });

  it('says nothing of a run where the speed stood still', () => {
    const steady = simulateTrial(line, {
      duration: 12,
      sampleRate: 400,
      seed: 4,
      speed: 3000 * RPM,
      hullMass: 1.5,
    });
    const choices = { wantedSpeed, readAt: 3000 * RPM, speed: 3000 * RPM, line };
    const course = trialCourse(steady.recording, choices);
    expect(course.moved).toBe(false);
    expect(runAnswer(course, 'metric')).toBeUndefined();
  });

  it('takes the speed that the builder entered for the highest of the run, where half of it looks alike', () => {
    const sound = simulateTrial(line, {
      kind: 'sound',
      duration: 12,
      sampleRate: 8000,
      seed: 5,
      hullMass: 1.5,
      speed: [
        { time: 1, speed: 1200 * RPM },
        { time: 11, speed: 4600 * RPM },
      ],
    }).recording;
    const course = trialCourse(sound, { wantedSpeed, readAt: wantedSpeed, speed: 4600 * RPM, line });
    expect(Math.abs(course.track!.speed.at(-1)! / RPM - 4600)).toBeLessThan(60);
  });

  it('does not follow what is too long, and says what to do', () => {
    const long = { ...run, sampling: { ...run.sampling, duration: 61 } };
    const course = trialCourse(long, { wantedSpeed, readAt: wantedSpeed, line });
    expect(course.track).toBeUndefined();
    expect(course.unfollowed).toContain('choose the stretch of a run-up');
  });
});

describe('courseOrders', () => {
  it('shows an order beyond half the rate where it folds to', () => {
    const [second] = courseOrders({}, { orders: [2], speed: 4000 * RPM, from: 0, to: 5, sampleRate: 100 });
    // 133.3 Hz sampled at 100 Hz stand at 33.3 Hz.
    expect(second!.frequency[0]).toBeCloseTo(133.33, 2);
    expect(second!.apparent[0]).toBeCloseTo(33.33, 2);
  });
});

describe('runLines', () => {
  it('lays an order against speed, ascending, without what is hidden', () => {
    const speed = Float64Array.of(30, 20, 10, 20, 30);
    const amplitude = Float64Array.of(3, 2, 1, 4, 99);
    const hidden = Uint8Array.of(0, 0, 0, 0, 1);
    const order = {
      order: 1,
      channel: 'x',
      unit: 'm/s²' as const,
      amplitude,
      amplitudeError: amplitude,
      hidden,
      channels: [],
    };
    const track = {
      time: Float64Array.of(0, 1, 2, 3, 4),
      speed,
      speedFrom: 'given' as const,
      confidence: 1,
      orders: [order],
    };
    expect(runLines(track)[0]).toMatchObject({ speed: [10, 20, 30], amplitude: [1, 3, 3] });
  });
});
