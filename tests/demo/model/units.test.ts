import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  formatFigure,
  fromScreen,
  toScreen,
  writeNumber,
  type ScreenQuantity,
} from '../../../packages/demo/src/model/units.js';

const QUANTITIES: ScreenQuantity[] = [
  'length',
  'diameter',
  'speed',
  'angle',
  'mass',
  'inertia',
  'unbalance',
  'stiffness',
  'speed-constant',
  'voltage',
  'current',
  'resistance',
  'frequency',
  'share',
  'ratio',
  'count',
  'speed-angle',
];

describe('toScreen', () => {
  // International yard and pound agreement, 1959: the inch is 25.4 mm, the pound 0.45359237 kg (16 oz), exactly.
  // The standard acceleration of gravity is 9.80665 m/s², exactly.
  it.each([
    [0.0254, 'length', 'inch', 1],
    [0.0254, 'length', 'metric', 25.4],
    [0.45359237, 'mass', 'inch', 16],
    [0.45359237, 'mass', 'metric', 453.59237],
    [(0.45359237 / 16) * 0.0254 ** 2, 'inertia', 'inch', 1],
    [1e-3 * 1e-4, 'inertia', 'metric', 1],
    [(0.45359237 * 9.80665) / 0.0254, 'stiffness', 'inch', 1],
    [1000, 'stiffness', 'metric', 1],
    [2 * Math.PI, 'speed', 'metric', 60],
    [2 * Math.PI, 'speed', 'inch', 60],
    [Math.PI, 'angle', 'metric', 180],
    [0.06, 'resistance', 'metric', 60],
    [0.25, 'share', 'metric', 25],
  ] as const)('%d of %s in %s units is %d', (value, quantity, units, expected) => {
    expect(toScreen(value, quantity, units)).toBeCloseTo(expected, 12);
  });

  it('comes back through fromScreen', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-12, max: 1e12, noNaN: true }),
        fc.constantFrom(...QUANTITIES),
        fc.constantFrom('metric' as const, 'inch' as const),
        (value, quantity, units) => {
          const there = toScreen(value, quantity, units);
          expect(Math.abs(fromScreen(there, quantity, units) - value)).toBeLessThanOrEqual(
            1e-12 * Math.abs(value),
          );
        },
      ),
    );
  });
});

describe('formatFigure', () => {
  const RPM = Math.PI / 30;
  it.each([
    [6204 * RPM, 'speed', 'metric', '6\u202f200\u00a0rpm'],
    [6206 * RPM, 'speed', 'metric', '6\u202f210\u00a0rpm'],
    [847 * RPM, 'speed', 'metric', '847\u00a0rpm'],
    [(14 * Math.PI) / 180, 'angle', 'metric', '14.0°'],
    [-(14 * Math.PI) / 180, 'angle', 'metric', '−14.0°'],
    [0.005, 'length', 'metric', '5\u00a0mm'],
    [0.005, 'length', 'inch', '0.197\u00a0in'],
    [0.3758, 'length', 'metric', '376\u00a0mm'],
    [0.06, 'share', 'metric', '6.0\u00a0%'],
    [0.0027, 'share', 'metric', '0.27\u00a0%'],
    [0.25, 'share', 'metric', '25\u00a0%'],
    [0.000004, 'share', 'metric', '0\u00a0%'],
    [2.316, 'ratio', 'metric', '2.32'],
    [Infinity, 'speed', 'metric', 'none'],
  ] as const)('writes %d of %s in %s units as %j', (value, quantity, units, expected) => {
    expect(formatFigure(value, quantity, units)).toBe(expected);
  });

  it('writes no minus before a zero', () => {
    expect(writeNumber(-0.001, 'angle')).toBe('0.0');
  });
});
