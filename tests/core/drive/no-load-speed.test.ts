import { describe, expect, it } from 'vitest';
import { exampleLine, noLoadSpeed, parseShaftLine } from '@sternline/core';
import { lineWithout } from './motors.js';

describe('noLoadSpeed', () => {
  it('is the speed constant times the voltage left by the no-load current', () => {
    // From memory, linear motor model: 50 rad/s a volt, 11.1 V, 1 A through 0.1 Ω: 50 × 11.0 = 550 rad/s.
    const line = parseShaftLine({
      ...exampleLine(),
      motor: { speedConstant: 50, resistance: 0.06, noLoadCurrent: 1, rotorInertia: 1e-5 },
      supply: { voltage: 11.1, resistance: 0.04 },
    });
    expect(noLoadSpeed(line)).toBeCloseTo(550, 9);
  });

  it('is unknown without a motor or a supply', () => {
    expect(noLoadSpeed(lineWithout('motor'))).toBeUndefined();
    expect(noLoadSpeed(lineWithout('supply'))).toBeUndefined();
  });
});
