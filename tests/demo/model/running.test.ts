import { exampleLine } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { runningOf, throttleAt, withDrivePart } from '../../../packages/demo/src/model/running.js';

const line = exampleLine();

describe('runningOf', () => {
  it('balances the power: what goes in is on the shaft or heat in the motor', () => {
    const running = runningOf(line, 345);
    expect(running.kind).toBe('runs');
    if (running.kind !== 'runs') return;
    for (const { powerIn, powerOut, motorHeat } of [running.full, running.wanted!]) {
      expect(powerOut + motorHeat).toBeCloseTo(powerIn, 9);
    }
    expect(running.wanted!.speed).toBeCloseTo(345, 6);
  });

  it('says that a speed is out of reach', () => {
    const running = runningOf(line, 1000);
    expect(running.kind === 'runs' && running.wanted).toBeUndefined();
    expect(throttleAt(line, 1000)).toBeUndefined();
  });

  it('names what is missing, and runs once it is added', () => {
    const { motor: _, supply: __, ...bare } = line;
    expect(runningOf(bare, 345)).toEqual({ kind: 'missing', missing: ['motor', 'supply'] });
    expect(throttleAt(bare, 345)).toBeUndefined();
    const naked = { ...line, shafts: line.shafts.map((shaft) => ({ ...shaft, discs: [] })) };
    const [disc] = withDrivePart(naked, 'propeller').shafts.at(-1)!.discs;
    // A propeller without a mass could not be chosen on the drawing.
    expect(disc!.at).toBe(line.shafts.at(-1)!.length);
    expect(withDrivePart(line, 'propeller').shafts).toEqual(line.shafts);
    expect(runningOf(withDrivePart(withDrivePart(bare, 'motor'), 'supply'), 345).kind).toBe('runs');
  });
});
