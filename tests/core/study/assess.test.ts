import fc from 'fast-check';
import { shaftOf, lineOf, steel } from '../../support/lines.js';
import { describe, expect, it } from 'vitest';
import {
  assess,
  criticalSpeeds,
  exampleLine,
  jointAngles,
  parseShaftLine,
  torsionalCriticals,
  type ShaftLine,
} from '@sternline/core';

const RPM = Math.PI / 30;

/** The example line with every shaft straight behind the motor. */
function straight(): ShaftLine {
  const line = exampleLine();
  return parseShaftLine({
    ...line,
    shafts: line.shafts.map((shaft) => ({ ...shaft, elevation: 0, plan: 0 })),
  });
}

describe('assess', () => {
  it('keeps the stated margins either side of each critical speed', () => {
    // Law: a band is [Ω₁ (1 − m), Ω₂ (1 + m)] about the critical speeds that whirl gives on its own.
    const line = exampleLine();
    const result = assess(line, { speed: 3300 * RPM });
    const first = criticalSpeeds(line, { order: 1, count: 4 })[0]!.speed;
    const band = result.avoidBands.find(({ excitation }) => excitation === 'unbalance')!;
    expect(band.from / first).toBeCloseTo(0.75, 12);
    expect(band.to / first).toBeCloseTo(1.25, 12);
    expect(result.speedLimit.speed).toBe(band.from);
    const backward = criticalSpeeds(line, { order: 2, whirl: 'backward', count: 4 })[0]!.speed;
    const forward = criticalSpeeds(line, { order: 2, whirl: 'forward', count: 4 })[0]!.speed;
    const half = result.avoidBands.find(({ excitation }) => excitation === 'joints')!;
    expect(half.from / Math.min(backward, forward)).toBeCloseTo(0.85, 9);
    expect(half.to / Math.max(backward, forward)).toBeCloseTo(1.15, 9);
  });

  it('is inside in the middle of any band, whatever else holds', () => {
    const line = exampleLine();
    for (const band of assess(line, { speed: 5000 * RPM }).avoidBands) {
      const verdict = assess(line, { speed: (band.from + band.to) / 2 });
      expect(verdict.verdict).toBe('inside');
      expect(verdict.reasons[0]!.severity).toBe('inside');
    }
  });

  it('is clear at a tenth of the lowest critical speed of any order', () => {
    const line = exampleLine();
    const all = assess(line, { speed: 3300 * RPM });
    const lowest = Math.min(...[...all.criticalSpeeds, ...all.torsionalCriticals].map(({ speed }) => speed));
    const result = assess(line, { speed: lowest / 10 });
    expect(result.verdict).toBe('clear');
    expect(result.reasons.filter(({ severity }) => severity === 'inside' || severity === 'near')).toEqual([]);
  });

  it('is never clear above the speed limit', () => {
    const line = exampleLine();
    const { speedLimit } = assess(line, { speed: 3300 * RPM });
    fc.assert(
      fc.property(fc.double({ min: 1.0001, max: 5, noNaN: true }), (times) => {
        expect(assess(line, { speed: speedLimit.speed * times }).verdict).not.toBe('clear');
      }),
      { numRuns: 60 },
    );
  });

  it.each([
    [6, 4],
    [7, 4],
    [10, 5],
  ])('is inside on every critical speed below the limit, %i spans and %i blades', (spans, blades) => {
    // With many bushes the modes lie close: each critical, found on its own with modes to spare, must be in some band.
    const supports = Array.from({ length: spans + 1 }, (_, i) => ({ at: i / spans }));
    const shaft = shaftOf({ length: 1, outerDiameter: 0.006, material: steel, supports });
    const propeller = { blades, diameter: 0.04, pitch: 0.04, torqueCoefficient: 0.03 };
    const line = parseShaftLine({ ...lineOf([shaft]), propeller });
    const limit = assess(line, { speed: 100 }).speedLimit.speed;
    const criticals = (['forward', 'backward'] as const)
      .flatMap((whirl) => criticalSpeeds(line, { order: blades, whirl, count: 30 }))
      .map(({ speed }) => speed)
      .filter((speed) => speed < limit);
    expect(criticals.length).toBeGreaterThan(4);
    for (const speed of criticals) expect(assess(line, { speed }).verdict).toBe('inside');
  });

  it('does not call a joint clear that is bent ten times past what plain pins bear', () => {
    const line = exampleLine();
    const [motor, shaft] = line.shafts;
    const bent = parseShaftLine({ ...line, shafts: [motor, { ...shaft, elevation: -Math.PI / 6 }] });
    // 30° at 8 000 rpm: 240 000 rpm × degrees, sixteen times the published 15 000.
    expect(assess(bent, { speed: 8000 * RPM }).verdict).toBe('inside');
  });

  it('sees a torsional resonance of a line without joints', () => {
    // Rotor, shaft and propeller with four blades, run where the blades meet the first mode: the torque reverses.
    const { joints: _joints, motor, supply, propeller } = exampleLine();
    const own = exampleLine().shafts[1]!;
    const line = parseShaftLine({
      name: 'no joint',
      joints: [],
      shafts: [
        { ...own, outerDiameter: 0.004, supports: [{ at: 0.01 }, ...own.supports], tubeBore: undefined },
      ],
      motor,
      supply,
      propeller,
    });
    const blades = torsionalCriticals(line, { orders: [4] })[0]!;
    const { avoidBands } = assess(line, { speed: blades.speed });
    expect(avoidBands.filter(({ motion }) => motion === 'twist').length).toBeGreaterThan(0);
  });

  it('leaves the joints out where they stand straight', () => {
    expect(jointAngles(straight())).toEqual([0]);
    const orders = assess(straight(), { speed: 3300 * RPM }).criticalSpeeds.map(
      ({ excitation }) => excitation,
    );
    expect(new Set(orders)).toEqual(new Set(['unbalance', 'blades']));
  });

  it('narrows with the margins that are given', () => {
    const line = exampleLine();
    const none = assess(line, { speed: 3300 * RPM, margins: { whirl: 0, joints: 0, blades: 0, twist: 0 } });
    for (const band of none.avoidBands) {
      expect(band.from).toBeCloseTo(Math.min(...band.criticalSpeeds), 9);
      expect(band.to).toBeCloseTo(Math.max(...band.criticalSpeeds), 9);
    }
  });

  it('warns of plain pins above 15 000 rpm × degrees', () => {
    // Published limit: 5° at 3 000 rpm, 1.5° at 10 000 rpm. 14° reaches it at 15 000 / 14 = 1 071.4 rpm.
    const line = exampleLine();
    const kinds = (rpm: number) => assess(line, { speed: rpm * RPM }).reasons.map(({ kind }) => kind);
    expect(kinds(1071)).not.toContain('speed-times-angle');
    expect(kinds(1072)).toContain('speed-times-angle');
  });

  it('is inside where a joint stands beyond what its maker allows', () => {
    const line = exampleLine();
    const tight = parseShaftLine({ ...line, joints: [{ ...line.joints[0], maxAngle: 0.2 }] });
    const result = assess(tight, { speed: 10 });
    expect(result.verdict).toBe('inside');
    expect(result.reasons[0]!.sentence).toBe('Joint 1 stands at 14.0°; its maker allows 11.5°.');
  });

  it('says its reasons in the trade’s units and keeps the figures apart', () => {
    const result = assess(exampleLine(), { speed: 3300 * RPM });
    const [first] = result.reasons;
    expect(first!.kind).toBe('band');
    expect(first!.sentence).toMatch(
      /^At 3\u202f300 rpm it runs inside the band of the first whirl driven by the joints/,
    );
    expect(first!.figures['speed']).toEqual({ quantity: 'speed', value: 3300 * RPM });
    expect(first!.template).toContain('{from} to {to}');
  });

  it('tells the loads against what the parts bear', () => {
    const line = exampleLine();
    const weak = parseShaftLine({
      ...line,
      joints: [
        { ...line.joints[0], ratedTorque: 0.01, fastener: { kind: 'set-screw', size: 0.002, count: 1 } },
      ],
    });
    const result = assess(weak, { speed: 1000 * RPM, torque: 0.5 });
    const kinds = result.reasons.map(({ kind }) => kind);
    expect(kinds).toContain('rated-torque');
    expect(kinds).toContain('fastener');
    expect(result.verdict).toBe('inside');
    expect(result.loads!.torque).toBe(0.5);
    const rated = result.reasons.find(({ kind }) => kind === 'rated-torque')!;
    expect(rated.sentence).toMatch(/^Joint 1 carries \d+ N·mm at its peak; it is rated for 10\.0 N·mm\.$/);
  });

  it('is beyond what a shaft bears where its stress passes yield', () => {
    // Derived: a solid 5 mm shaft shears at τ = 16 T / (π d³); T = 20 N·m gives 815 MPa, past any yield in the catalogue.
    const result = assess(exampleLine(), { speed: 100 * RPM, torque: 20 });
    const strength = result.reasons.filter(({ kind }) => kind === 'shaft-strength');
    expect(strength.map(({ severity }) => severity)).toContain('inside');
    expect(result.verdict).toBe('inside');
  });

  it('says how much throttle the speed takes, and where the motor gives up', () => {
    const line = exampleLine();
    const easy = assess(line, { speed: 1000 * RPM });
    expect(easy.drive!.throttle).toBeGreaterThan(0);
    expect(easy.drive!.throttle).toBeLessThan(0.4);
    const beyond = assess(line, { speed: 6000 * RPM });
    expect(beyond.drive!.throttle).toBeUndefined();
    const reach = beyond.reasons.find(({ kind }) => kind === 'motor-reach')!;
    expect(reach.severity).toBe('note');
    expect(reach.sentence).toContain('is beyond it');
  });

  it('makes a band of a torsional resonance only where the torque would reverse, once for each order and mode', () => {
    const line = exampleLine();
    const twist = assess(line, { speed: 3300 * RPM }).avoidBands.filter(({ motion }) => motion === 'twist');
    const keys = twist.map(({ order, mode }) => `${order} ${mode}`);
    expect(new Set(keys).size).toBe(keys.length);
    for (const band of twist) expect(band.to / band.from).toBeCloseTo(1.1 / 0.9, 9);
    // A line whose joints stand straight and whose blades push nothing is not driven in twist.
    const { propeller: _, ...rest } = straight();
    const still = assess(parseShaftLine(rest), { speed: 3300 * RPM, torque: 0.05 });
    expect(still.avoidBands.filter(({ motion }) => motion === 'twist')).toEqual([]);
  });

  it('does without loads where nothing tells the torque, and says so', () => {
    const line = exampleLine();
    const { propeller: _, ...without } = line;
    const bare = assess(parseShaftLine(without), { speed: 345 });
    expect(bare.loads).toBeUndefined();
    expect(bare.reasons.map(({ kind }) => kind)).toContain('unknown-torque');
    const odd = parseShaftLine({ ...line, propeller: { blades: 9, diameter: 0.048, pitch: 0.05 } });
    const result = assess(odd, { speed: 345 });
    expect(result.loads).toBeUndefined();
    expect(result.reasons.map(({ kind }) => kind)).toContain('unknown-torque');
    expect(assess(odd, { speed: 345, torque: 0.05 }).loads!.torque).toBe(0.05);
  });

  it('refuses figures out of their domain', () => {
    const line = exampleLine();
    expect(() => assess(line, { speed: 0 })).toThrow(
      'assess: speed must be a finite number greater than 0, got 0',
    );
    expect(() => assess(line, { speed: NaN })).toThrow(
      'assess: speed must be a finite number greater than 0, got NaN',
    );
    expect(() => assess(line, { speed: 1, margins: { whirl: 1 } })).toThrow(
      'assess: margins.whirl must be a share from 0 up to but not including 1, got 1',
    );
  });
});
