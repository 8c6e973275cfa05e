import { assess, exampleLine } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { EMPTY_BALANCE, type BalanceBook } from '../../../packages/demo/src/model/advice.js';
import { bladeAngles, walkBalance } from '../../../packages/demo/src/model/balance-walk.js';

const DEGREE = Math.PI / 180;
const RPM = Math.PI / 30;
const line = exampleLine();
const wanted = 3300 * RPM;

// Derived: 10 g alone shakes 5; as found it shakes 8, by the cosine rule with the heavy side opposite 20°.
const full: BalanceBook = {
  ...EMPTY_BALANCE,
  mass: 0.01,
  radius: 0.012,
  runs: {
    found: { amplitude: 8 },
    first: { amplitude: 3.718143 },
    second: { amplitude: 10.143562 },
    third: { amplitude: 12.259019 },
  },
};

describe('walkBalance', () => {
  it('asks for the trial mass first, then for the runs in order', () => {
    expect(walkBalance(EMPTY_BALANCE, line, wanted).next).toBe('mass');
    expect(walkBalance({ ...full, runs: {} }, line, wanted).next).toBe('found');
    const { third: _, ...two } = full.runs;
    expect(walkBalance({ ...full, runs: two }, line, wanted).next).toBe('third');
    expect(walkBalance(full, line, wanted).next).toBe('check');
  });

  it('finds 16 g at 20°', () => {
    const { result } = walkBalance(full, line, wanted);
    expect(result?.balance.mass).toBeCloseTo(0.016, 6);
    expect(result!.balance.angle / DEGREE).toBeCloseTo(20, 3);
  });

  it('lays it on the two blades beside it, by the sine rule', () => {
    const { result } = walkBalance(full, line, wanted);
    // Derived: blades at 0° and 90°, so 16 cos 20° and 16 sin 20°.
    expect(result?.split.parts.map(({ position }) => position)).toEqual([0, 1]);
    const [first, second] = result!.split.parts.map(({ mass }) => mass * 1000);
    expect(first).toBeCloseTo(16 * Math.cos(20 * DEGREE), 3);
    expect(second).toBeCloseTo(16 * Math.sin(20 * DEGREE), 3);
  });

  it('takes the mass off on the other side where it is to be taken off', () => {
    const { result } = walkBalance({ ...full, by: 'removing' }, line, wanted);
    expect(result?.split.parts.map(({ position }) => position)).toEqual([2, 3]);
  });

  it('judges the run with the correction on', () => {
    const after = (amplitude: number) =>
      walkBalance({ ...full, runs: { ...full.runs, check: { amplitude } } }, line, wanted);
    expect(after(0.2).verification?.verdict).toBe('as expected');
    expect(after(9).verification?.verdict).toBe('worse');
    expect(after(0.2).next).toBe('done');
  });

  it('says why readings come to nothing', () => {
    const run = { amplitude: 8 };
    const runs = { found: run, first: run, second: run, third: run };
    const { problem, result } = walkBalance({ ...full, runs }, line, wanted);
    expect(result).toBeUndefined();
    expect(problem).toContain('changes the amplitude');
    expect(problem).not.toContain('balanceByAmplitudes');
  });

  it('proposes a speed well below the first whirl', () => {
    for (const rpm of [1000, 2000, 3300, 12000]) {
      const { speed, band } = walkBalance(EMPTY_BALANCE, line, rpm * RPM);
      const { avoidBands, criticalSpeeds } = assess(line, { speed: rpm * RPM });
      const first = Math.min(
        ...criticalSpeeds.filter(({ order }) => order === 1).map((found) => found.speed),
      );
      expect(speed).toBeLessThanOrEqual(Math.min(rpm * RPM, 0.65 * first));
      expect(avoidBands.filter(({ from, to }) => speed >= from && speed <= to)).toEqual([]);
      expect(band).toBeUndefined();
    }
  });

  it('leaves a wanted speed as it is where nothing speaks against it', () => {
    expect(walkBalance(EMPTY_BALANCE, line, 1000 * RPM).speed / RPM).toBeCloseTo(1000, 9);
  });

  it('names the band that a chosen speed lies in', () => {
    // 3 300 rpm lies in the band of the first whirl driven by the joints, as the first visit's verdict says.
    expect(walkBalance({ ...full, speed: 3300 * RPM }, line, wanted).band?.name).toContain('joints');
  });

  it('tells how hard the trial mass pulls: m r Ω²', () => {
    const { pull } = walkBalance({ ...full, speed: 100 }, line, wanted);
    expect(pull).toBeCloseTo(0.01 * 0.012 * 100 ** 2, 12);
  });
});

describe('bladeAngles', () => {
  it('spreads blades evenly, the first at 0', () => {
    expect(bladeAngles(3).map((angle) => Math.round(angle / DEGREE))).toEqual([0, 120, 240]);
  });
});
