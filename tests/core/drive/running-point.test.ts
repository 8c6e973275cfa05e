import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  effectiveTorqueCoefficient,
  exampleLine,
  noLoadSpeed,
  propellerTorque,
  runningPoint,
  speedFromHull,
  throttleFor,
  throttleRange,
} from '@sternline/core';
import { lineWith, lineWithout, RPM } from './motors.js';

interface Row {
  readonly speedConstant: number;
  readonly resistance: number;
  readonly noLoadCurrent: number;
  readonly voltage: number;
  readonly supplyResistance: number;
  readonly throttle: number;
  readonly diameter: number;
  readonly pitch: number;
  readonly blades: number;
  readonly areaRatio: number;
  readonly waterSpeed: number;
  readonly speed: number;
  readonly current: number;
  readonly torque: number;
}

const reference = JSON.parse(
  readFileSync(new URL('../../reference/drive/running.json', import.meta.url), 'utf8'),
) as { running: Row[] };

/** K_Q that asks for a torque at a speed. */
function coefficientFor(torque: number, speed: number, diameter: number): number {
  return torque / (1000 * (speed / (2 * Math.PI)) ** 2 * diameter ** 5);
}

describe('runningPoint', () => {
  it('of a direct-current motor of 12 V, 3800 rpm and 30 mN·m at stall, loaded to 2500 rpm', () => {
    // Inputs read at https://www.homeworklib.com/question/1976071/for-a-pmdc-motor-powered-by-a-12-v-dc-source-the;
    // answers derived from T = T_stall (1 − n/n₀): 10.2632 mN·m, 0.340339 A, 4.08407 W in, 2.686888 W out, 1.397182 W lost
    const speedConstant = (3800 * RPM) / 12;
    const stall = 0.03 * speedConstant;
    const torqueCoefficient = coefficientFor(0.03 * (1 - 2500 / 3800), 2500 * RPM, 0.03);
    const line = lineWith({
      motor: { speedConstant, resistance: 12 / stall, noLoadCurrent: 0 },
      supply: { voltage: 12, resistance: 0 },
      propeller: { diameter: 0.03, pitch: 0.03, torqueCoefficient },
    });
    const point = runningPoint(line);
    expect(point.speed / RPM).toBeCloseTo(2500, 6);
    expect(point.torque).toBeCloseTo(0.0102632, 7);
    expect(point.current).toBeCloseTo(0.340339, 6);
    expect(point.powerIn).toBeCloseTo(4.08407, 5);
    expect(point.powerOut).toBeCloseTo(2.686888, 5);
    expect(point.motorHeat).toBeCloseTo(1.397182, 5);
    expect(point.propeller.source).toBe('given');
  });

  it('of a motor with 12 V per 1000 rpm and 0.12 N·m/A on 10 V behind 1.5 Ω, loaded with 0.6 N·m', () => {
    // Inputs read at https://store.perpetualshade.com/juntos/45751752; its two constants differ (12 V/krpm is 0.1146 N·m/A),
    // so here the consistent one: I = 0.6 k, n = n₀ − I R k (derived). k = 8.72665 rad/s per V.
    const speedConstant = (1000 * RPM) / 12;
    const speed = speedConstant * (10 - 1.5 * 0.6 * speedConstant);
    const line = lineWith({
      motor: { speedConstant, resistance: 1.5, noLoadCurrent: 0 },
      supply: { voltage: 10, resistance: 0 },
      propeller: { diameter: 0.1, pitch: 0.1, torqueCoefficient: coefficientFor(0.6, speed, 0.1) },
    });
    const point = runningPoint(line);
    expect(point.speed).toBeCloseTo(speed, 9);
    expect(point.current).toBeCloseTo(0.6 * speedConstant, 9);
  });

  it('of a 40 mm three-bladed propeller of the series, held at the quay', () => {
    // Computed on its own from the same equations: 6014.692 rpm, 0.0613689 N·m, 6.92654 A, 10.4367 N
    const line = lineWith({
      motor: { speedConstant: 1000 * RPM, resistance: 0.2, noLoadCurrent: 0.5 },
      supply: { voltage: 7.4, resistance: 0 },
      propeller: { blades: 3, diameter: 0.04, pitch: 0.04 },
    });
    const point = runningPoint(line);
    expect(point.speed / RPM).toBeCloseTo(6014.692, 2);
    expect(point.torque).toBeCloseTo(0.0613689, 6);
    expect(point.current).toBeCloseTo(6.92654, 4);
    expect(point.propeller.thrust).toBeCloseTo(10.4367, 3);
    expect(point.propeller.source).toBe('series');
    // n D (0.75 π) × chord / ν = 100.2 × 0.04 × 2.356 × 0.01382 / 1.1e-6, by hand: far below the 2·10⁶ of the series
    expect(point.propeller.reynoldsNumber).toBeCloseTo(118_700, -3);
  });

  it.each(reference.running)('agrees with scipy at $waterSpeed m/s and throttle $throttle', (row) => {
    const line = lineWith({
      motor: {
        speedConstant: row.speedConstant,
        resistance: row.resistance,
        noLoadCurrent: row.noLoadCurrent,
      },
      supply: { voltage: row.voltage, resistance: row.supplyResistance },
      propeller: { blades: row.blades, diameter: row.diameter, pitch: row.pitch },
    });
    const { throttle, waterSpeed, areaRatio } = row;
    const point = runningPoint(line, { throttle, waterSpeed, areaRatio });
    expect(Math.abs(point.speed / row.speed - 1)).toBeLessThan(1e-10);
    expect(Math.abs(point.current / row.current - 1)).toBeLessThan(1e-9);
    expect(Math.abs(point.torque / row.torque - 1)).toBeLessThan(1e-9);
  });

  it('conserves power: electricity in is shaft power and heat', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const drives = fc.record({
      resistance: fc.double({ min: 0.001, max: 1, noNaN: true }),
      inner: fc.double({ min: 0, max: 0.3, noNaN: true }),
      throttle: share,
      waterSpeed: fc.double({ min: 0, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(drives, ({ resistance, inner, throttle, waterSpeed }) => {
        const line = lineWith({ motor: { resistance }, supply: { resistance: inner } });
        const point = runningPoint(line, { throttle, waterSpeed });
        const spent = point.powerOut + point.motorHeat;
        expect(Math.abs(point.powerIn - spent)).toBeLessThanOrEqual(1e-9 * Math.max(1, spent));
        const drawn = line.supply!.voltage * point.supplyCurrent - point.supplyHeat;
        expect(Math.abs(point.powerIn - drawn)).toBeLessThanOrEqual(1e-9 * Math.max(1, drawn));
        expect(point.efficiency).toBeLessThan(1);
      }),
    );
  });

  it('turns slower than without load, and the slower the larger the coefficient', () => {
    const at = (torqueCoefficient: number) =>
      runningPoint(lineWith({ propeller: { torqueCoefficient } })).speed;
    expect(at(1e-12)).toBeCloseTo(noLoadSpeed(exampleLine())!, 4);
    expect(at(0.02)).toBeGreaterThan(at(0.03));
    expect(at(0.03)).toBeGreaterThan(at(0.06));
  });

  it('turns faster in water that moves', () => {
    const still = runningPoint(exampleLine()).speed;
    const moving = runningPoint(exampleLine(), { waterSpeed: 1 }).speed;
    expect(moving).toBeGreaterThan(still);
    expect(runningPoint(exampleLine(), { waterSpeed: 0 }).speed).toBeCloseTo(still, 9);
  });

  it('counts no torque where the water alone would turn the propeller', () => {
    const point = runningPoint(exampleLine(), { throttle: 0.02, waterSpeed: 3 });
    expect(point.torque).toBe(0);
    expect(point.speed).toBeGreaterThan(0);
  });

  it('stands still where the throttle does not overcome the friction of the motor', () => {
    // I₀ (R + R_s τ²) ≈ 1.1 A × 0.06 Ω = 0.066 V; 0.004 × 11.1 V = 0.0444 V
    const point = runningPoint(exampleLine(), { throttle: 0.004 });
    expect(point.speed).toBe(0);
    expect(point.torque).toBe(0);
    expect(point.current).toBeCloseTo(0.0444 / (0.06 + 0.03 * 0.004 ** 2), 9);
    expect(point.motorHeat).toBeCloseTo(0.0444 ** 2 / 0.06, 5);
    expect(runningPoint(exampleLine(), { throttle: 0 }).current).toBe(0);
  });

  it('names what is missing', () => {
    expect(() => runningPoint(lineWithout('motor', 'propeller'))).toThrow(
      'runningPoint: line.motor and line.propeller must be given, got undefined',
    );
    expect(() => runningPoint(lineWithout('supply'))).toThrow(
      'runningPoint: line.supply must be given, got undefined',
    );
    expect(() => runningPoint(exampleLine(), { throttle: 1.1 })).toThrow(
      'runningPoint: throttle must be a share from 0 to 1, got 1.1',
    );
    expect(() => runningPoint(lineWith({ propeller: { blades: 1 } }))).toThrow(
      'runningPoint: line.propeller.torqueCoefficient must be given, since the series has 2 to 7 blades, got undefined',
    );
    expect(() => runningPoint(lineWith({ propeller: { pitch: 0.1 } }))).toThrow(
      'runningPoint: line.propeller.torqueCoefficient must be given, since the series has pitch over diameter from 0.5 to 1.4, not 2.08, got undefined',
    );
    expect(() => runningPoint(exampleLine(), { advance: 0.2, waterSpeed: 1 })).toThrow(
      'runningPoint: advance must be left out where waterSpeed is given, got 0.2',
    );
    expect(() => runningPoint(exampleLine(), { waterDensity: 0 })).toThrow(
      'runningPoint: waterDensity must be a finite number greater than 0, got 0',
    );
  });
});

describe('throttleFor', () => {
  it('undoes runningPoint', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1, noNaN: true }), (throttle) => {
        const { speed } = runningPoint(exampleLine(), { throttle });
        expect(throttleFor(exampleLine(), { speed })).toBeCloseTo(throttle, 9);
      }),
    );
  });

  it('says where a speed is beyond the motor', () => {
    const { speed } = runningPoint(exampleLine());
    expect(throttleFor(exampleLine(), { speed: 1.001 * speed })).toBeUndefined();
    expect(throttleFor(exampleLine(), { speed: 1e6 })).toBeUndefined();
    expect(() => throttleFor(exampleLine(), { speed: -1 })).toThrow(
      'throttleFor: speed must be a finite number of at least 0, got -1',
    );
    expect(() => throttleFor(lineWithout('motor'), { speed: 1 })).toThrow(
      'throttleFor: line.motor must be given, got undefined',
    );
  });
});

describe('throttleRange', () => {
  it('runs from rest to full throttle, ever faster', () => {
    const { start, points } = throttleRange(exampleLine(), { count: 11 });
    expect(points).toHaveLength(11);
    expect(points[0]!.throttle).toBe(start);
    expect(points[0]!.speed).toBeLessThan(1e-9);
    expect(points[10]).toEqual(runningPoint(exampleLine()));
    points.slice(1).forEach((point, i) => {
      expect(point.speed).toBeGreaterThan(points[i]!.speed);
      expect(point.torque).toBeGreaterThan(points[i]!.torque);
    });
    // the drop of the no-load current, 1.1 A × (0.06 + 0.03 τ²) Ω, is all the voltage there
    expect(start * 11.1).toBeCloseTo(1.1 * (0.06 + 0.03 * start ** 2), 12);
    expect(throttleFor(exampleLine(), { speed: 0 })).toBeCloseTo(start, 12);
  });

  it('refuses fewer than two points', () => {
    expect(() => throttleRange(exampleLine(), { count: 1 })).toThrow(
      'throttleRange: count must be a whole number from 2 to 1000, got 1',
    );
    expect(() => throttleRange(lineWithout('motor'))).toThrow('throttleRange: line.motor must be given');
  });
});

describe('propellerTorque', () => {
  it('is K_Q ρ n² D⁵', () => {
    // 0.04 × 1000 × 50² × 0.048⁵ by hand: 0.0254804 N·m
    const line = lineWith({ propeller: { torqueCoefficient: 0.04 } });
    expect(propellerTorque(line, { speed: 100 * Math.PI })).toBeCloseTo(0.0254804, 7);
    expect(propellerTorque(line, { speed: 100 * Math.PI, waterDensity: 1025 })).toBeCloseTo(0.0261174, 7);
    expect(propellerTorque(exampleLine(), { speed: 0 })).toBe(0);
  });

  it('is that of the running point', () => {
    const { speed, torque } = runningPoint(exampleLine(), { throttle: 0.7, waterSpeed: 0.8 });
    expect(propellerTorque(exampleLine(), { speed, waterSpeed: 0.8 })).toBeCloseTo(torque, 12);
  });

  it('needs a propeller and nothing else', () => {
    expect(propellerTorque(lineWithout('motor', 'supply'), { speed: 300 })).toBeGreaterThan(0);
    expect(() => propellerTorque(lineWithout('propeller'), { speed: 300 })).toThrow(
      'propellerTorque: line.propeller must be given, got undefined',
    );
    expect(() => propellerTorque(exampleLine(), { speed: Infinity })).toThrow(
      'propellerTorque: speed must be a finite number of at least 0, got Infinity',
    );
  });
});

describe('effectiveTorqueCoefficient', () => {
  it('gives back the coefficient that a run was made with, from speed or from current', () => {
    const line = lineWith({ propeller: { torqueCoefficient: 0.037 } });
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1, noNaN: true }), (throttle) => {
        const { speed, current } = runningPoint(line, { throttle });
        expect(effectiveTorqueCoefficient(line, { speed, throttle })).toBeCloseTo(0.037, 8);
        expect(effectiveTorqueCoefficient(line, { speed, throttle, current })).toBeCloseTo(0.037, 10);
      }),
    );
  });

  it('refuses a run without load', () => {
    const speed = noLoadSpeed(exampleLine())!;
    expect(() => effectiveTorqueCoefficient(exampleLine(), { speed: speed * 1.01 })).toThrow(
      'effectiveTorqueCoefficient: speed must be below the no-load speed at this throttle, got ',
    );
    expect(() => effectiveTorqueCoefficient(exampleLine(), { speed: 300, current: 1 })).toThrow(
      'effectiveTorqueCoefficient: current must be above the no-load current of the motor, got 1',
    );
    expect(() => effectiveTorqueCoefficient(exampleLine(), { speed: 300, throttle: 0 })).toThrow(
      'effectiveTorqueCoefficient: throttle must be a share above 0 and up to 1, got 0',
    );
    expect(() => effectiveTorqueCoefficient(lineWithout('supply'), { speed: 300 })).toThrow(
      'effectiveTorqueCoefficient: line.supply must be given, got undefined',
    );
  });
});

describe('speedFromHull', () => {
  it('of a ship of 3.8 m pitch at 10 knots and 6.634 % slip: 87 rpm', () => {
    // https://www.funnel2tunnel.com/answers/what-is-slip/: 257.054 nautical miles by engine in 24 h, slip 6.6 %
    const speed = speedFromHull({ hullSpeed: (10 * 1852) / 3600, pitch: 3.8, slip: 0.06634402 });
    expect(speed / RPM).toBeCloseTo(87, 4);
  });

  it('of a ship of 19 ft pitch that made 183.5 nautical miles in 24 h: 44 rpm at 7.38 %', () => {
    // Inputs of a licence question read at https://seatrials.net/study/ (pitch of 19.0 feet); slip recomputed, 6076.12 ft a mile
    const hullSpeed = (183.5 * 6076.12 * 0.3048) / 86_400;
    const speed = speedFromHull({ hullSpeed, pitch: 19 * 0.3048, slip: 0.0738 });
    expect(Math.abs(speed / RPM / 44 - 1)).toBeLessThan(1e-3);
  });

  it('refuses a slip of all', () => {
    expect(() => speedFromHull({ hullSpeed: 1, pitch: 0.05, slip: 1 })).toThrow(
      'speedFromHull: slip must be a share from 0 up to but not including 1, got 1',
    );
    expect(() => speedFromHull({ hullSpeed: 0, pitch: 0.05, slip: 0.3 })).toThrow(
      'speedFromHull: hullSpeed must be a finite number greater than 0, got 0',
    );
    expect(() => speedFromHull({ hullSpeed: 1, pitch: -1, slip: 0.3 })).toThrow(
      'speedFromHull: pitch must be a finite number greater than 0, got -1',
    );
  });
});
