import { alignmentLimits, shimMotor, type ClockReadings, type CouplingReadings } from '@sternline/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { moved, simulate, type Pose } from './coupling.js';

const still: ClockReadings = { top: 0, bottom: 0, port: 0, starboard: 0 };
const feet = { front: 0.05, rear: 0.11 };
const RPM = Math.PI / 30;

/** The three ways to read one coupling. */
const ways: readonly (readonly [string, (pose: Pose) => CouplingReadings])[] = [
  [
    'rim-and-face',
    (pose) => ({ kind: 'rim-and-face', ...simulate.rimAndFace(pose, 0.036), faceDiameter: 0.036, feet }),
  ],
  [
    'reverse-indicator',
    (pose) => ({
      kind: 'reverse-indicator',
      ...simulate.reverseIndicator(pose, 0.04),
      separation: 0.04,
      feet,
    }),
  ],
  [
    'ruler-and-feeler',
    (pose) => ({
      kind: 'ruler-and-feeler',
      ...simulate.rulerAndFeeler(pose, 0.036),
      faceDiameter: 0.036,
      feet,
    }),
  ],
];

const offsets = fc.double({ min: -1e-3, max: 1e-3, noNaN: true });
const slopes = fc.double({ min: -0.02, max: 0.02, noNaN: true });
const poses = fc.record({ port: offsets, up: offsets, toPort: slopes, rising: slopes });

describe('shimMotor', () => {
  // F = bf·B/D − br/2, R = bf·A/D − br/2: https://fdocuments.us/document/formula-for-face-and-rim-alignment-calculation.html;
  // the figures are derived from it. mm.
  it.each([
    [0.2, -0.3, 100, 150, 400, 0.45, 0.95],
    [0.1, 0.4, 120, 250, 600, 0.0083333, 0.3],
  ])('follows the rule of rim and face for %f and %f mm', (bf, br, D, B, A, front, rear) => {
    const across = { port: -0.0001, starboard: 0.0003 };
    const got = shimMotor({
      kind: 'rim-and-face',
      rim: { ...still, bottom: br / 1000 },
      face: { ...still, bottom: bf / 1000 },
      faceDiameter: D / 1000,
      feet: { front: B / 1000, rear: A / 1000 },
    });
    expect(Math.abs(1000 * got.feet.front.vertical - front)).toBeLessThan(4e-8);
    expect(Math.abs(1000 * got.feet.rear.vertical - rear)).toBeLessThan(4e-8);
    expect(Math.abs(got.feet.front.horizontal)).toBe(0);
    const sideways = shimMotor({
      kind: 'rim-and-face',
      rim: { ...still, ...across },
      face: still,
      faceDiameter: 0.1,
      feet,
    });
    expect(Math.abs(sideways.feet.rear.horizontal + 0.0002)).toBeLessThan(1e-15);
  });

  // Offsets of 0.10 and 0.05 mm, half of what the dials show, in planes 150 mm apart: a straight line has 0.0167 and
  // −0.0833 mm at 250 and 550 mm. Derived.
  it('draws a straight line through the offsets of two dials', () => {
    const got = shimMotor({
      kind: 'reverse-indicator',
      onShaft: { ...still, bottom: 0.0002 },
      onMotor: { ...still, bottom: -0.0001 },
      separation: 0.15,
      feet: { front: 0.25, rear: 0.55 },
    });
    expect(Math.abs(1000 * got.feet.front.vertical + 0.0166667)).toBeLessThan(4e-8);
    expect(Math.abs(1000 * got.feet.rear.vertical - 0.0833333)).toBeLessThan(4e-8);
    expect(got.offset.vertical).toBe(0.0001);
  });

  it('reads a straight edge and feelers', () => {
    // Motor 0.4 mm high; gap 0.2 mm wider at the top over 40 mm: its axis rises 1 in 200 going aft. By hand.
    const got = shimMotor({
      kind: 'ruler-and-feeler',
      step: { top: 0.0004, port: 0 },
      gap: { top: 0.0012, bottom: 0.001, port: 0.0011, starboard: 0.0011 },
      faceDiameter: 0.04,
      feet,
    });
    expect(Math.abs(got.angularity.vertical - 0.005)).toBeLessThan(1e-15);
    expect(Math.abs(got.feet.front.vertical - (0.005 * 0.05 - 0.0004))).toBeLessThan(1e-15);
    expect(Math.abs(got.feet.rear.vertical - (0.005 * 0.11 - 0.0004))).toBeLessThan(1e-15);
    expect(got.assumed).toEqual([
      'No step was read at bottom and starboard: both hubs are taken to have one diameter.',
    ]);
  });

  it.each(ways)('moves nothing where %s finds the shafts in line', (_, read) => {
    const { feet: got } = shimMotor(read({ port: 0, up: 0, toPort: 0, rising: 0 }));
    for (const move of [got.front, got.rear])
      expect(Math.hypot(move.vertical, move.horizontal)).toBeLessThan(1e-16);
  });

  it.each(ways)(
    'leaves nothing to move once the shims by %s are in, as a coupling in space has it',
    (_, read) => {
      fc.assert(
        fc.property(poses, (pose) => {
          const first = shimMotor(read(pose));
          const size = Math.hypot(pose.port, pose.up) + 0.11 * Math.hypot(pose.toPort, pose.rising);
          // Rules of alignment drop what is of second order: angles of 0.03 at most, offsets over a hub of 20 mm.
          const second = 0.05 * size + 1e-15;
          expect(Math.abs(first.offset.vertical - pose.up)).toBeLessThan(second);
          expect(Math.abs(first.offset.horizontal - pose.port)).toBeLessThan(second);
          let now = pose;
          for (let round = 0; round < 6; round++) now = moved(now, feet, shimMotor(read(now)).feet);
          expect(Math.hypot(now.port, now.up)).toBeLessThan(1e-12);
          expect(Math.hypot(now.toPort, now.rising)).toBeLessThan(1e-11);
        }),
      );
    },
  );

  it('finds the same by all three ways', () => {
    fc.assert(
      fc.property(poses, (pose) => {
        const found = ways.map(([, read]) => shimMotor(read(pose)).feet.rear);
        const size = Math.hypot(pose.port, pose.up) + 0.11 * Math.hypot(pose.toPort, pose.rising);
        for (const { vertical, horizontal } of found) {
          expect(Math.abs(vertical - found[0]!.vertical)).toBeLessThan(0.05 * size + 1e-15);
          expect(Math.abs(horizontal - found[0]!.horizontal)).toBeLessThan(0.05 * size + 1e-15);
        }
      }),
    );
  });

  it('takes the sag of the bracket out of what the dial shows up and down', () => {
    const [, read] = ways[0]!;
    const readings = read({ port: 2e-4, up: -3e-4, toPort: 0, rising: 0 });
    if (readings.kind !== 'rim-and-face') throw new Error('rim and face expected');
    const sag = -6e-5;
    const { rim } = readings;
    const sagging = {
      top: rim.top,
      bottom: rim.bottom + sag,
      port: rim.port + sag / 2,
      starboard: rim.starboard + sag / 2,
    };
    const got = shimMotor({ ...readings, rim: sagging, sag });
    const bare = shimMotor(readings);
    expect(Math.abs(got.offset.vertical - bare.offset.vertical)).toBeLessThan(1e-18);
    expect(Math.abs(got.offset.horizontal - bare.offset.horizontal)).toBeLessThan(1e-18);
    expect(Math.abs(got.closure - bare.closure)).toBeLessThan(1e-18);
    expect(
      Math.abs(shimMotor({ ...readings, rim: sagging }).offset.vertical - bare.offset.vertical - sag / 2),
    ).toBeLessThan(1e-18);
  });

  it('tells how far readings contradict themselves', () => {
    const got = shimMotor({
      kind: 'rim-and-face',
      rim: { top: 0, bottom: 1e-4, port: 2e-5, starboard: 5e-5 },
      face: still,
      faceDiameter: 0.04,
      feet,
    });
    expect(Math.abs(got.closure - 3e-5)).toBeLessThan(1e-18);
  });

  // Sums of independent readings: by differences of the result, the law of first order, which is exact here.
  it.each(ways)('carries the tolerance of each reading of %s to the feet', (_, read) => {
    const readings = { ...read({ port: 1e-4, up: 2e-4, toPort: 1e-3, rising: -2e-3 }), tolerance: 1e-5 };
    const { tolerance, ...plain } = readings;
    const clocks = Object.entries(plain).filter(([, value]) => typeof value === 'object' && 'top' in value);
    const rear = (changed: object) => shimMotor({ ...plain, ...changed }).feet.rear;
    const base = rear({});
    const squares = { vertical: 0, horizontal: 0 };
    for (const [name, clock] of clocks) {
      for (const side of ['top', 'bottom', 'port', 'starboard'] as const) {
        const values = clock as unknown as ClockReadings;
        const got = rear({ [name]: { ...values, [side]: values[side] + tolerance } });
        squares.vertical += (got.vertical - base.vertical) ** 2;
        squares.horizontal += (got.horizontal - base.horizontal) ** 2;
      }
    }
    const { tolerance: reach } = shimMotor(readings);
    expect(Math.abs(reach.rear.vertical / Math.sqrt(squares.vertical) - 1)).toBeLessThan(1e-9);
    expect(Math.abs(reach.rear.horizontal / Math.sqrt(squares.horizontal) - 1)).toBeLessThan(1e-9);
  });

  it('judges a short coupling by offset and gap, and a spacer by its angles', () => {
    const readings = (offset: number, gap: number): CouplingReadings => ({
      kind: 'ruler-and-feeler',
      step: { top: offset, port: 0 },
      gap: { ...still, top: gap },
      faceDiameter: 0.1,
      feet,
      speed: 3000 * RPM,
    });
    // 3000 rpm: offset 0.06 and 0.03 mm, gap 0.04 and 0.03 mm per 100 mm, spacer 0.07 and 0.04 mm per 100 mm.
    expect(shimMotor(readings(0.000029, 0)).verdict!.grade).toBe('excellent');
    expect(shimMotor(readings(0.00005, 0)).verdict!.grade).toBe('acceptable');
    expect(shimMotor(readings(0.00007, 0)).verdict!.grade).toBe('outside');
    expect(shimMotor(readings(0, 0.000035)).verdict!.grade).toBe('acceptable');
    expect(shimMotor(readings(0, 0.000045)).verdict!.grade).toBe('outside');
    const spacer = shimMotor({ ...readings(0.00005, 0), spacer: 0.1 }).verdict!;
    expect(spacer.grade).toBe('acceptable');
    expect(Math.abs(spacer.spacer!.value - 0.0005)).toBeLessThan(1e-15);
    expect(spacer.offset).toBeUndefined();
    // The motor in line at the far end, off at the near one: one joint of the spacer bends, the other not less.
    const bent = shimMotor({ ...readings(0.00005, 0.00005), spacer: 0.1 }).verdict!;
    expect(Math.abs(bent.spacer!.value - 0.0005)).toBeLessThan(1e-15);
  });
});

describe('alignmentLimits', () => {
  // https://www.scribd.com/document/331518189/Alignment-Tolerances-pdf, mm.
  it.each([
    [750, 0.19, 0.09, 0.13, 0.09, 0.25, 0.15],
    [1500, 0.09, 0.06, 0.07, 0.05, 0.12, 0.07],
    [3000, 0.06, 0.03, 0.04, 0.03, 0.07, 0.04],
    [6000, 0.03, 0.02, 0.03, 0.02, 0.03, 0.02],
  ])('has the row of %i rpm', (rpm, ...row) => {
    const { offset, angularity, spacer, basis, softFoot } = alignmentLimits(rpm * RPM);
    const got = [
      1000 * offset.acceptable,
      1000 * offset.excellent,
      100 * angularity.acceptable,
      100 * angularity.excellent,
      100 * spacer.acceptable,
      100 * spacer.excellent,
    ];
    got.forEach((value, i) => {
      expect(Math.abs(value / row[i]! - 1)).toBeLessThan(1e-9);
    });
    expect(basis).toBe('table');
    expect(softFoot).toBe(0.00006);
  });

  it('never grows with speed, and says where the table ends', () => {
    let last = Infinity;
    for (let rpm = 100; rpm < 30_000; rpm *= 1.1) {
      const { offset } = alignmentLimits(rpm * RPM);
      expect(offset.acceptable).toBeLessThanOrEqual(last);
      last = offset.acceptable;
    }
    expect(alignmentLimits(500 * RPM).basis).toBe('below the table');
    const fast = alignmentLimits(12_000 * RPM);
    expect(fast.basis).toBe('beyond the table');
    expect(Math.abs(fast.offset.acceptable - 0.000015)).toBeLessThan(1e-15);
  });

  it('refuses a speed that is none', () => {
    expect(() => alignmentLimits(0)).toThrow(
      new RangeError('alignmentLimits: speed must be a finite number greater than 0, got 0'),
    );
  });
});

describe('shimMotor refuses', () => {
  const good: CouplingReadings = { kind: 'rim-and-face', rim: still, face: still, faceDiameter: 0.04, feet };
  it.each([
    [{ rim: { ...still, port: NaN } }, 'rim.port must be a finite number, got NaN'],
    [{ face: { top: 0, bottom: 0, port: 0 } }, 'face.starboard must be a finite number, got NaN'],
    [{ faceDiameter: 0 }, 'faceDiameter must be a finite number greater than 0, got 0'],
    [{ sag: Infinity }, 'sag must be a finite number, got Infinity'],
    [{ tolerance: -1 }, 'tolerance must be a finite number of at least 0, got -1'],
    [{ speed: -1 }, 'speed must be a finite number greater than 0, got -1'],
    [{ spacer: 0 }, 'spacer must be a finite number greater than 0, got 0'],
    [
      { feet: { front: 0.1, rear: 0.1 } },
      'feet.rear must be greater than feet.front (0.1 m): further from the coupling, got 0.1',
    ],
    [{ kind: 'laser' }, 'kind must be one of rim-and-face, reverse-indicator, ruler-and-feeler, got "laser"'],
  ])('%o', (fault, text) => {
    expect(() => shimMotor({ ...good, ...fault } as CouplingReadings)).toThrow(
      new RangeError(`shimMotor: ${text}`),
    );
  });

  it('planes and steps that are none', () => {
    expect(() =>
      shimMotor({ kind: 'reverse-indicator', onShaft: still, onMotor: still, separation: 0, feet }),
    ).toThrow(new RangeError('shimMotor: separation must be a finite number greater than 0, got 0'));
    expect(() =>
      shimMotor({
        kind: 'ruler-and-feeler',
        step: { top: NaN, port: 0 },
        gap: still,
        faceDiameter: 0.04,
        feet,
      }),
    ).toThrow(new RangeError('shimMotor: step.top must be a finite number, got NaN'));
  });
});
