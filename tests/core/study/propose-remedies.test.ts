import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  assess,
  exampleLine,
  jointAngles,
  parseShaftLine,
  proposeRemedies,
  STOCK,
  type Assessment,
  type Reason,
  type Remedy,
  type ShaftLine,
  type Support,
} from '@sternline/core';
import { lineChanges } from '../../../packages/core/src/study/line-changes.js';
import { RPM, STUDY_CASES, sized, twoJoints, withLastShaft } from './study-lines.js';

const BADNESS = { clear: 0, near: 1, inside: 2 } as const;

/** How often each kind of trouble is 'inside'; bands by their name, since another band is another trouble. */
function troubles({ reasons }: Assessment): Map<string, number> {
  const counts = new Map<string, number>();
  const name = ({ kind, template }: Reason) =>
    kind === 'band' ? template.replace(/^.*band of the /, '').replace(/ \(.*$/, '') : kind;
  for (const reason of reasons.filter(({ severity }) => severity === 'inside'))
    counts.set(name(reason), (counts.get(name(reason)) ?? 0) + 1);
  return counts;
}

function isSafe(before: Assessment, after: Assessment): boolean {
  const known = troubles(before);
  const fresh = [...troubles(after)].filter(([name, count]) => count > (known.get(name) ?? 0));
  return fresh.length === 0 && BADNESS[after.verdict] <= BADNESS[before.verdict];
}

/** Distance to the nearest edge of a band as a share of the speed, from its definition. */
function clearance({ speed, avoidBands }: Assessment): number {
  return Math.min(...avoidBands.map(({ from, to }) => Math.max(from - speed, speed - to) / speed));
}

const found = new Map<string, Remedy[]>();

function remediesOf({ title, line, speed }: (typeof STUDY_CASES)[number]): Remedy[] {
  const known = found.get(title) ?? proposeRemedies(line, { speed });
  found.set(title, known);
  return known;
}

describe.each(STUDY_CASES)('proposeRemedies, $title', (one) => {
  const { line, speed } = one;
  const before = assess(line, { speed });
  const remedies = remediesOf(one);

  it('gives lines that can be built, each with its own assessment', () => {
    expect(remedies.length).toBeGreaterThan(5);
    for (const remedy of remedies) {
      expect(parseShaftLine(remedy.line)).toEqual(remedy.line);
      const anew = assess(remedy.line, { speed: remedy.speed });
      expect(remedy.assessment.verdict).toBe(anew.verdict);
      expect(remedy.gains.verdict).toEqual({ before: before.verdict, after: anew.verdict });
      expect(remedy.gains.speedLimit.after).toBe(anew.speedLimit.speed);
      expect(remedy.gains.speedLimit.gain).toBeCloseTo(anew.speedLimit.speed - before.speedLimit.speed, 9);
      expect(remedy.gains.fluctuation).toEqual({
        before: before.fluctuation.degree,
        after: anew.fluctuation.degree,
      });
      expect(remedy.gains.clearance.after).toBeCloseTo(clearance(anew), 9);
    }
  });

  it('helps nowhere at the cost of safety elsewhere, and says why where it does not help', () => {
    for (const { helps, whyNot, assessment } of remedies) {
      if (helps) expect(isSafe(before, assessment)).toBe(true);
      expect(whyNot === undefined).toBe(helps);
    }
  });

  it('ranks by points over effort, those that help in front', () => {
    // The formula of the documentation, worked out here from the assessments alone.
    const held = (x: number) => Math.min(0.3, Math.max(-0.3, x));
    const reach = ({ avoidBands, drive }: Assessment, at: number) =>
      avoidBands.filter(({ from, to }) => to > at && from <= drive!.fullThrottle!.speed).length;
    const worth = remedies.map(({ gains, costs, assessment, speed: at }) => {
      const force = gains.unbalanceForce;
      const [f0, f1] = [before.fluctuation.degree, assessment.fluctuation.degree];
      const points =
        4 * (BADNESS[before.verdict] - BADNESS[assessment.verdict]) +
        Math.log2(assessment.speedLimit.speed / before.speedLimit.speed) +
        (held(clearance(assessment)) - held(clearance(before))) / 0.15 +
        (f0 - f1) / Math.max(f0, f1, 0.0027) +
        (force.before - force.after) / Math.max(force.before, force.after) +
        (reach(before, speed) - reach(assessment, at)) / 2 -
        (8 * Math.abs(at - speed)) / speed;
      return (
        points / (costs.work + costs.money / 2 + { no: 0, reversible: 0.5, cutting: 2 }[costs.destructive])
      );
    });
    remedies.forEach((remedy, i) => {
      expect(remedy.worth).toBeCloseTo(worth[i]!, 9);
      const next = remedies[i + 1];
      if (!next) return;
      expect(Number(remedy.helps)).toBeGreaterThanOrEqual(Number(next.helps));
      if (remedy.helps === next.helps) expect(worth[i]!).toBeGreaterThanOrEqual(worth[i + 1]! - 1e-12);
    });
  });

  it('marks the least work that is clear at the speed, as a search of every change and every pair finds it', () => {
    const marked = remedies.filter(({ least }) => least);
    const changes = lineChanges(line, { before, margins: undefined });
    const tries = changes.flatMap((first, i) => [
      { work: first.costs.work, made: [first] },
      ...changes
        .slice(i + 1)
        .filter(({ kind }) => kind !== first.kind)
        .map((second) => ({ work: first.costs.work + second.costs.work, made: [first, second] })),
    ]);
    const clear = tries.filter(({ made }) => {
      const changed = made.reduce((now, { apply }) => apply(now), line);
      try {
        return assess(parseShaftLine(changed), { speed }).verdict === 'clear';
      } catch {
        return false;
      }
    });
    if (before.verdict === 'clear' || clear.length === 0) {
      expect(marked).toEqual([]);
      return;
    }
    expect(marked).toHaveLength(1);
    expect(marked[0]!.costs.work).toBe(Math.min(...clear.map(({ work }) => work)));
    expect(marked[0]!.assessment.verdict).toBe('clear');
    expect(marked[0]!.speed).toBe(speed);
  });

  it('puts the further bush where a fine grid finds nothing better', () => {
    const bush = remedies.find(({ kinds }) => kinds.join() === 'bush')!;
    // The longest span behind the motor, every 2 mm of it.
    const last = line.shafts.length - 1;
    const supports = line.shafts[last]!.supports;
    const [front, rear] = [supports[0]!, supports.at(-1)!];
    let best = { badness: 3, limit: 0 };
    for (let at = front.at + 0.026; at <= rear.at - 0.026; at += 0.002) {
      const added: Support = { ...front, at };
      const changed = parseShaftLine({
        ...line,
        shafts: line.shafts.map((shaft, i) =>
          i === last ? { ...shaft, supports: [front, added, rear] } : shaft,
        ),
      });
      const { reasons, speedLimit } = assess(changed, { speed });
      const bands = reasons.filter(
        ({ kind, sentence }) => /^(band|above-first-whirl)$/.test(kind) && !sentence.includes('torsional'),
      );
      const severities = bands.map(({ severity }) => BADNESS[severity as keyof typeof BADNESS]);
      const badness = Math.max(0, ...severities);
      if (badness < best.badness || (badness === best.badness && speedLimit.speed > best.limit))
        best = { badness, limit: speedLimit.speed };
    }
    const own = bush.assessment.reasons
      .filter(
        ({ kind, sentence }) => /^(band|above-first-whirl)$/.test(kind) && !sentence.includes('torsional'),
      )
      .map(({ severity }) => BADNESS[severity as keyof typeof BADNESS]);
    expect(Math.max(0, ...own)).toBe(best.badness);
    // The mark is set to half a millimetre, and the limit bends sharply where two modes swap: 1 %.
    expect(bush.assessment.speedLimit.speed).toBeGreaterThan(0.99 * best.limit);
  });
});

describe('proposeRemedies', () => {
  const kindsOf = (remedies: readonly Remedy[]) => new Set(remedies.flatMap(({ kinds }) => kinds));
  const only = (remedies: readonly Remedy[], kind: string) =>
    remedies.filter(({ kinds }) => kinds.join() === kind);

  it('looks at every kind of change', () => {
    const all = STUDY_CASES.flatMap((one) => [...kindsOf(remediesOf(one))]);
    const wanted =
      'fastener propeller balance joint section material overhang bush shim layout yokes speed supply';
    expect(new Set(all)).toEqual(new Set(wanted.split(' ')));
  });

  it('takes stock sizes, bushes and tube following', () => {
    const remedies = only(remediesOf(STUDY_CASES[0]!), 'section');
    const shafts = remedies.map(({ line }) => line.shafts[1]!);
    const solid = shafts.filter(({ innerDiameter }) => innerDiameter === 0);
    expect(solid.map(({ outerDiameter }) => outerDiameter).sort()).toEqual([0.004, 0.006, 0.007]);
    const [tube] = shafts.filter(({ innerDiameter }) => innerDiameter > 0);
    expect(STOCK.shaftTubes).toContainEqual({
      outerDiameter: tube!.outerDiameter,
      innerDiameter: tube!.innerDiameter,
    });
    for (const { outerDiameter, tubeBore, supports } of shafts) {
      // As in the line as built: 0.03 mm in the bush, 1 mm all round in the tube, or more.
      expect(supports[0]!.bore! - outerDiameter).toBeCloseTo(0.00003, 9);
      expect(tubeBore! - outerDiameter).toBeGreaterThan(0.002 - 1e-9);
    }
  });

  it('splits a bend into two equal ones that turn evenly, and closes them again', () => {
    const [split] = only(remediesOf(STUDY_CASES[0]!), 'layout');
    const [first, second] = jointAngles(split!.line);
    expect(first! / jointAngles(exampleLine())[0]!).toBeCloseTo(0.5, 9);
    expect(second).toBeCloseTo(first!, 9);
    // Equal angles in one plane, yokes in phase: two joints cancel.
    expect(split!.gains.fluctuation.after).toBeLessThan(1e-9);
    const [closed] = only(proposeRemedies(twoJoints(), { speed: 345 }), 'layout');
    expect(jointAngles(closed!.line)[0]).toBeCloseTo(jointAngles(exampleLine())[0]!, 9);
  });

  it('turns yokes into phase for an evening’s work', () => {
    const [turned] = only(remediesOf(STUDY_CASES.find(({ title }) => title.includes('phase'))!), 'yokes');
    expect(turned!.gains.fluctuation.before).toBeGreaterThan(0.005);
    expect(turned!.gains.fluctuation.after).toBeLessThan(1e-9);
    expect(turned!.costs).toMatchObject({ work: 1, money: 1, destructive: 'no', buy: [] });
  });

  it('shims the motor to half the angle and to what plain pins bear', () => {
    const shims = only(remediesOf(STUDY_CASES[0]!), 'shim');
    const degrees = shims.map(({ line }) => (jointAngles(line)[0]! * 180) / Math.PI).sort((a, b) => a - b);
    // Published limit for plain pins: 15 000 rpm × degrees; 14° halved.
    expect(degrees[0]).toBeCloseTo(15000 / 3300, 6);
    expect(degrees[1]).toBeCloseTo(7, 6);
  });

  it('secures set screws before anything is cut', () => {
    const loose = STUDY_CASES.find(({ title }) => title === 'loose screws')!;
    expect(troubles(assess(loose.line, { speed: loose.speed })).has('fastener')).toBe(true);
    const least = remediesOf(loose).find((remedy) => remedy.least)!;
    expect(least.kinds).toEqual(['fastener']);
    expect(least.costs.work).toBe(1);
  });

  it('names no least work where the line is clear, and no other speed', () => {
    const clear = remediesOf(STUDY_CASES.find(({ title }) => title === 'six millimetres')!);
    expect(clear.every(({ least }) => !least)).toBe(true);
    expect(only(clear, 'speed')).toEqual([]);
    const tempting = clear.find(({ kinds }) => kinds.includes('joint'))!;
    expect(tempting.helps).toBe(false);
    expect(tempting.whyNot!.sentence).toContain('clear already');
  });

  it('moves the speed to the nearest clear one', () => {
    const { line, speed } = STUDY_CASES[0]!;
    const moved = only(remediesOf(STUDY_CASES[0]!), 'speed');
    expect(moved.length).toBeGreaterThan(0);
    for (const remedy of moved) {
      // No speed of whole ten turns a minute between the two is clear.
      const [low, high] = [Math.min(speed, remedy.speed), Math.max(speed, remedy.speed)];
      for (let rpm = Math.ceil(low / RPM / 10 + 0.01) * 10; rpm * RPM < high - 0.01; rpm += 10)
        expect(assess(line, { speed: rpm * RPM }).verdict).not.toBe('clear');
    }
  });

  it('tells what comes next', () => {
    const six = remediesOf(STUDY_CASES[0]!).find(({ title }) => title.startsWith('Shaft of 6.00 mm'))!;
    const above = six.assessment.avoidBands.filter(({ from }) => from > six.speed);
    const first = above.reduce((low, band) => (band.from < low.from ? band : low));
    expect(six.next.sentence).toContain(first.name);
    expect(six.next.figures['from']!.value).toBe(first.from);
  });

  it('is the same every time', () => {
    const { line, speed } = STUDY_CASES[0]!;
    expect(proposeRemedies(line, { speed })).toEqual(remediesOf(STUDY_CASES[0]!));
  });

  it('keeps to margins and torque that are given', () => {
    const { line, speed } = STUDY_CASES[0]!;
    const none = { whirl: 0, joints: 0, blades: 0, twist: 0 };
    const before = assess(line, { speed, margins: none, torque: 0.1 });
    const remedies = proposeRemedies(line, { speed, margins: none, torque: 0.1 });
    for (const { gains, assessment } of remedies) {
      expect(gains.verdict.before).toBe(before.verdict);
      if (assessment.speed === speed) expect(assessment.loads!.torque).toBe(0.1);
    }
  });

  it('answers for a bare shaft and for a line that nothing spans', () => {
    const bare = parseShaftLine({
      shafts: [{ length: 0.3, outerDiameter: 0.005, material: 'steel', supports: [{ at: 0 }, { at: 0.3 }] }],
    });
    expect(kindsOf(proposeRemedies(bare, { speed: 600 })).has('section')).toBe(true);
    const held = parseShaftLine({
      shafts: [
        { length: 0.1, outerDiameter: 0.005, material: 'steel', supports: [{ at: 0.05, fixesSlope: true }] },
      ],
    });
    expect(proposeRemedies(held, { speed: 600 })).toEqual([]);
  });

  it('refuses a speed of nothing and a margin of one', () => {
    expect(() => proposeRemedies(exampleLine(), { speed: 0 })).toThrow(
      'proposeRemedies: speed must be a finite number greater than 0, got 0',
    );
    expect(() => proposeRemedies(exampleLine(), { speed: 300, margins: { whirl: 1 } })).toThrow(
      'assess: margins.whirl must be a share from 0 up to but not including 1, got 1',
    );
  });

  it('never advises what is unsafe elsewhere, whatever the line', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const anyLine = fc
      .record({
        diameter: fc.constantFrom(0.003, 0.004, 0.005, 0.006, 0.008),
        span: between(0.12, 0.45),
        overhang: between(0.008, 0.05),
        bend: between(0, 0.4),
        plan: between(-0.2, 0.2),
        mass: between(0.004, 0.08),
        screw: fc.constantFrom(0.002, 0.003, 0.004),
        seatingTorque: between(0.01, 0.5),
        blades: fc.integer({ min: 2, max: 5 }),
        speed: between(800 * RPM, 9000 * RPM),
      })
      .map(({ diameter, span, overhang, bend, plan, mass, screw, seatingTorque, blades, speed }) => {
        const end = 0.026 + span + overhang;
        const rod = sized(diameter);
        const line: ShaftLine = withLastShaft(
          (shaft) => ({
            ...rod({
              ...shaft,
              supports: [
                { ...shaft.supports[0]!, at: 0.026 },
                { ...shaft.supports[1]!, at: 0.026 + span },
              ],
            }),
            length: end + 0.01,
            elevation: -bend,
            plan,
            discs: shaft.discs.map((disc) => ({ ...disc, at: end, mass })),
          }),
          {
            propeller: { ...exampleLine().propeller!, blades },
            joints: [
              {
                ...exampleLine().joints[0]!,
                fastener: { kind: 'set-screw', size: screw, count: 1, seatingTorque },
              },
            ],
          },
        );
        return { line, speed };
      });
    fc.assert(
      fc.property(anyLine, ({ line, speed }) => {
        const before = assess(line, { speed });
        for (const { helps, assessment } of proposeRemedies(line, { speed }))
          if (helps) expect(isSafe(before, assessment)).toBe(true);
      }),
      { numRuns: 25, seed: 5 },
    );
  }, 120_000);

  it('answers for any chain of joints, soft bushes and missing parts, and stays safe there', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const anyShaft = fc.record({
      length: between(0.03, 0.5),
      outerDiameter: fc.constantFrom(0.0016, 0.003, 0.0055, 0.008, 0.02),
      share: fc.constantFrom(0, 0.5),
      material: fc.constantFrom('carbon steel', 'brass', 'titanium', 'aluminium'),
      elevation: between(-0.4, 0.4),
      plan: between(-0.3, 0.3),
      yokeTwist: between(-2, 2),
      stiffness: fc.option(between(1e4, 1e8), { nil: undefined }),
      lining: fc.option(fc.constantFrom('PTFE', 'sintered bronze', 'ball bearing'), { nil: undefined }),
    });
    const anyChain = fc.record({
      shafts: fc.array(anyShaft, { minLength: 1, maxLength: 4 }),
      kind: fc.constantFrom('universal', 'flexible'),
      propeller: fc.option(fc.constantFrom(2, 4), { nil: undefined }),
      speed: between(20, 1500),
    });
    fc.assert(
      fc.property(anyChain, ({ shafts, kind, propeller, speed }) => {
        const line = parseShaftLine({
          shafts: shafts.map(({ share, stiffness, lining, ...shaft }, i) => ({
            ...shaft,
            innerDiameter: share * shaft.outerDiameter,
            supports: [0.1, 0.8].map((at) => ({
              at: at * shaft.length,
              length: 0.01,
              radialStiffness: stiffness,
              lining,
            })),
            discs:
              i < shafts.length - 1
                ? []
                : [{ name: 'disc', at: shaft.length, mass: 0.03, polarInertia: 3e-6 }],
          })),
          joints: shafts.slice(1).map(() => ({ kind, mass: 0.01, polarInertia: 1e-6 })),
          propeller: propeller && { blades: propeller, diameter: 0.05, pitch: 0.05 },
        });
        const before = assess(line, { speed });
        for (const remedy of proposeRemedies(line, { speed })) {
          if (remedy.helps) expect(isSafe(before, remedy.assessment)).toBe(true);
          expect(parseShaftLine(remedy.line)).toEqual(remedy.line);
          const words = [
            remedy.heading,
            remedy.summary,
            remedy.next,
            ...remedy.costs.takes,
            ...remedy.costs.buy,
          ];
          for (const { sentence } of words) expect(sentence).not.toMatch(/NaN|undefined|\{\w+\}/);
        }
      }),
      { numRuns: 20, seed: 3 },
    );
  }, 120_000);
});
