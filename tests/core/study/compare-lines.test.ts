import { describe, expect, it } from 'vitest';
import {
  assess,
  compareLines,
  exampleLine,
  jointAngles,
  parseShaftLine,
  type ComparedFigureKey,
  type LineComparison,
  type ShaftLine,
} from '@sternline/core';
import { RPM, sized, twoJoints, withLastShaft } from './study-lines.js';

const speed = 3300 * RPM;

/** A bare steel rod on two pins: Ω = (π/L)² √(EI/ρA) ∝ d / L². */
function rod(diameter: number, name = 'rod'): ShaftLine {
  return parseShaftLine({
    name,
    shafts: [
      { length: 0.3, outerDiameter: diameter, material: 'carbon steel', supports: [{ at: 0 }, { at: 0.3 }] },
    ],
  });
}

const row = ({ rows }: LineComparison, key: ComparedFigureKey) => rows.find((one) => one.key === key)!;

describe('compareLines', () => {
  it('takes its figures from assess, and changes against the first line', () => {
    const lines = [exampleLine(), withLastShaft(sized(0.006)), twoJoints()];
    const found = compareLines(lines, { speed });
    const alone = lines.map((line) => assess(line, { speed }));
    expect(found.lines.map(({ verdict }) => verdict)).toEqual(alone.map(({ verdict }) => verdict));
    const limit = row(found, 'speed-limit');
    expect(limit.cells.map(({ value }) => value)).toEqual(alone.map((one) => one.speedLimit.speed));
    limit.cells.forEach(({ change }, i) => {
      expect(change).toBeCloseTo(alone[i]!.speedLimit.speed - alone[0]!.speedLimit.speed, 9);
    });
    const angles = row(found, 'joint-angle');
    expect(angles.cells.map(({ value }) => value)).toEqual(
      lines.map((line) => Math.max(...jointAngles(line))),
    );
    expect(angles.best).toEqual([2]);
    expect(angles.cells.map(({ difference }) => difference)).toEqual(['none', 'none', 'better']);
    expect(row(found, 'fluctuation').best).toEqual([2]);
    expect(limit.best).toEqual([1]);
  });

  it('weighs shafts, joints and discs', () => {
    // Derived: ρ π d² L / 4 of a steel rod of 7 800 kg/m³.
    const found = compareLines([rod(0.005), rod(0.006)], { speed: 100 });
    const [five, six] = row(found, 'mass').cells;
    expect(five!.value).toBeCloseTo((7800 * Math.PI * 0.005 ** 2 * 0.3) / 4, 12);
    expect(six!.change! / five!.value!).toBeCloseTo(0.44, 9);
  });

  it('says so where the change is less than what the tolerances spread', () => {
    // Derived: Ω ∝ d. A rectangle of ± 0.1 mm has 90 % of its draws within ± 0.09 mm, so that two of them spread a
    // difference by √2 · 0.09 = 0.127 mm of diameter: 0.1 mm more is none, 0.2 mm more is one. Without tolerances, both are.
    const tolerances = { 'shafts[0].outerDiameter': 0.0001 };
    const options = { speed: 200, samples: 400, seed: 4 };
    const limitOf = (diameter: number, given: object) =>
      row(compareLines([rod(0.005), rod(diameter)], { ...options, ...given }), 'speed-limit').cells[1]!;
    expect(limitOf(0.0051, { tolerances })).toMatchObject({ difference: 'none' });
    expect(limitOf(0.0051, { tolerances }).statement!.sentence).toContain('no difference shown');
    expect(limitOf(0.0052, { tolerances })).toMatchObject({ difference: 'better' });
    expect(limitOf(0.0051, {})).toMatchObject({ difference: 'better' });
    const { spread, value } = limitOf(0.0051, { tolerances });
    // 90 % of a rectangle, known to √(0.05 · 0.95 / 400) = 1.1 % of its width at either end; three of these.
    expect(Math.abs((spread!.high - spread!.low) / value! / (0.00018 / 0.0051) - 1)).toBeLessThan(0.06);
  });

  it('takes shared tolerances where a line has the measure, or one record for each', () => {
    const lines = [rod(0.005), exampleLine()];
    const shared = { 'shafts[0].outerDiameter': 0.00002, 'shafts[1].supports[1].at': 0.001 };
    const together = compareLines(lines, { speed, tolerances: shared, samples: 20 });
    const apart = compareLines(lines, {
      speed,
      tolerances: [{ 'shafts[0].outerDiameter': 0.00002 }, shared],
      samples: 20,
    });
    expect(apart.rows).toEqual(together.rows);
    const chances = Object.values(together.lines[1]!.chances!);
    expect(chances.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12);
  });

  it('spreads nothing where nothing is uncertain, and is the same every time', () => {
    const lines = [exampleLine(), twoJoints()];
    const still = compareLines(lines, { speed, tolerances: {}, samples: 3 });
    for (const { cells } of still.rows)
      for (const { spread, value } of cells)
        if (spread) expect([spread.low, spread.high]).toEqual([value, value]);
    const tolerances = { 'shafts[0].outerDiameter': 0.00002 };
    const once = compareLines(lines, { speed, tolerances, samples: 10, seed: 7 });
    expect(compareLines(lines, { speed, tolerances, samples: 10, seed: 7 })).toEqual(once);
    expect(compareLines(lines, { speed, tolerances, samples: 10, seed: 8 })).not.toEqual(once);
  });

  it('names the line with the better verdict, and why', () => {
    const six = { ...withLastShaft(sized(0.006)), name: 'six' };
    const found = compareLines([exampleLine(), six], { speed });
    expect(found.better).toBe(1);
    expect(found.summary.sentence).toContain('“six” is the better line: it is clear');
    expect(found.summary.figures['limit']!.value).toBe(assess(six, { speed }).speedLimit.speed);
  });

  it('goes by the speed limit where the verdict is one, whatever the limits of lines with a worse', () => {
    const [five, six, eight] = [0.005, 0.006, 0.008].map((diameter) =>
      rod(diameter, `${diameter * 1000} mm`),
    );
    const found = compareLines([five!, six!, eight!], { speed: 60 });
    expect(found.better).toBe(2);
    expect(found.summary.sentence).toContain('3 lines are clear');
    expect(found.summary.sentence).toContain('speed limit');
    // 8 mm on a longer span stands inside at its own whirl, 5 and 6 mm are clear below theirs.
    const slow = assess(five!, { speed: 60 }).speedLimit.speed * 0.8;
    const both = compareLines([five!, six!, rod(0.003, 'thin')], { speed: slow });
    expect(both.lines[2]!.verdict).not.toBe('clear');
    expect(both.better).toBe(1);
  });

  it('shows no difference between a line and itself', () => {
    const found = compareLines([exampleLine(), exampleLine()], { speed });
    expect(found.better).toBeUndefined();
    expect(found.summary.sentence).toContain('no difference is shown');
    for (const { best, cells } of found.rows) {
      expect(best).toEqual([]);
      expect(cells.map(({ difference }) => difference)).toEqual(['none', 'none']);
    }
  });

  it('turns round with the order of the lines', () => {
    const lines = [exampleLine(), withLastShaft(sized(0.006))];
    const there = compareLines(lines, { speed });
    const back = compareLines([...lines].reverse(), { speed });
    there.rows.forEach(({ key, cells }) => {
      const change = row(back, key).cells[1]!.change;
      if (cells[1]!.change !== undefined) expect(change).toBeCloseTo(-cells[1]!.change, 9);
    });
    expect(back.better).toBe(1 - there.better!);
  });

  it('refuses one line, a speed of nothing, and tolerances that lead nowhere', () => {
    const line = exampleLine();
    expect(() => compareLines([line], { speed })).toThrow(
      'compareLines: lines must be a list of two or more, got a list of 1',
    );
    expect(() => compareLines([line, line], { speed: 0 })).toThrow(
      'compareLines: speed must be a finite number greater than 0, got 0',
    );
    expect(() => compareLines([line, line], { speed, samples: 0 })).toThrow(
      'compareLines: samples must be a whole number from 1 to 100000, got 0',
    );
    expect(() => compareLines([line, line], { speed, tolerances: { 'shafts[7].length': 0.001 } })).toThrow(
      "compareLines: tolerances['shafts[7].length'] must be a number of one line or more, got undefined",
    );
    expect(() => compareLines([line, line], { speed, tolerances: [{}] })).toThrow(
      'compareLines: tolerances must be a list of 2, one for each line, got a list of 1',
    );
    expect(() => compareLines([line, line], { speed, tolerances: { 'shafts[0].length': -1 } })).toThrow(
      "compareLines: tolerances['shafts[0].length'] must be a finite number of at least 0, got -1",
    );
  });
});
