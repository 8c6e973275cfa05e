import { describe, expect, it } from 'vitest';
import { orderDriver } from '../../../packages/demo/src/model/order-drivers.js';
import type { ShaftLine } from '@sternline/core';

const line = {
  joints: [{ kind: 'universal', mass: 0, polarInertia: 0 }],
  propeller: { blades: 2, diameter: 0.05, pitch: 0.05 },
} as unknown as ShaftLine;

describe('orderDriver', () => {
  it('names what drives an order of this line, both where two things do', () => {
    expect(orderDriver(1, line)).toBe('unbalance, bend');
    expect(orderDriver(2, line)).toBe('joints, blades');
    expect(orderDriver(3, line)).toBe('');
    expect(orderDriver(2, undefined)).toBe('');
  });
});
