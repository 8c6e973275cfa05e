import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exampleLine, torsionalCriticals, torsionalModes, type ShaftLine } from '@sternline/core';
import { discOf, jointOf, lineOf, shaftOf, steel, weightlessSteel } from '../../support/lines.js';
import { extremeLine } from '../../support/random-lines.js';
import { lineOfChain, referenceChains, rotor } from './chains.js';

function within(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThanOrEqual(relative);
}

/** Inertias at the ends of weightless springs, as discs of one shaft after the other. */
function lumpedChain(inertias: readonly number[], springs: readonly number[]): ShaftLine {
  const shaft = { outerDiameter: 0.01, material: { ...weightlessSteel, density: 1e-12 } };
  const unit = (weightlessSteel.shearModulus * Math.PI * 0.01 ** 4) / 32;
  let at = 0;
  const discs = inertias.map((polarInertia, i) => {
    if (i > 0) at += unit / springs[i - 1]!;
    return discOf({ at, polarInertia });
  });
  return lineOf([shaftOf({ ...shaft, length: at, discs })]);
}

describe('torsionalModes', () => {
  it('of three inertias: Thomson, example 12.4-1', () => {
    // J 5, 11, 22 kg·m², K 0.1e6, 0.2e6 N·m/rad; W. T. Thomson, "Theory of Vibration with Applications", pp. 388–389,
    // https://digilib.universitaspertamina.ac.id/ebook/Theory%20of%20Vibration%20with%20Applications/files/basic-html/page401.html;
    // its Holzer table read, its roots recomputed: 123.666, 202.658; shapes [1, .2353, −.3449], [1, −1.0535, .2995]
    const modes = torsionalModes(lumpedChain([5, 11, 22], [0.1e6, 0.2e6]), { count: 2 });
    within(modes[0]!.frequency, 123.666, 5e-6);
    within(modes[1]!.frequency, 202.658, 5e-6);
    const at = (mode: number, station: number) => {
      const { shape } = modes[mode]!;
      const nearest = Array.from(shape.station, (place) => Math.abs(place - station));
      return shape.angle[nearest.indexOf(Math.min(...nearest))]! / shape.angle[0]!;
    };
    const unit = (weightlessSteel.shearModulus * Math.PI * 0.01 ** 4) / 32;
    const places = [unit / 0.1e6, unit / 0.1e6 + unit / 0.2e6];
    expect(at(0, places[0]!)).toBeCloseTo(0.2353, 4);
    expect(at(0, places[1]!)).toBeCloseTo(-0.3449, 4);
    expect(at(1, places[0]!)).toBeCloseTo(-1.0535, 4);
    expect(at(1, places[1]!)).toBeCloseTo(0.2995, 4);
    expect(modes.map(({ nodes }) => nodes.length)).toEqual([1, 2]);
  });

  it('of three rotors 0.3, 0.6 and 0.18 kg·m² on 70 mm', () => {
    // Inputs of a textbook problem (1.5 m and 1 m, G 84 GPa) read at https://www.transtutors.com/questions/ (three rotors A, B
    // and C); roots derived: 120.694 and 195.893 Hz
    const unit = (84e9 * Math.PI * 0.07 ** 4) / 32;
    const modes = torsionalModes(lumpedChain([0.3, 0.6, 0.18], [unit / 1.5, unit]), { count: 2 });
    within(modes[0]!.frequency / (2 * Math.PI), 120.694, 5e-6);
    within(modes[1]!.frequency / (2 * Math.PI), 195.893, 5e-6);
  });

  it('of two inertias: ω = √(k (J₁ + J₂) / (J₁ J₂)), the node at J₂ / (J₁ + J₂) of the length', () => {
    // derived; 2e-5 and 6e-5 kg·m² on 40.35878 N·m/rad: 261.062 Hz, node at 0.75; 254.452 Hz with the second a quarter up
    const chain = lumpedChain([2e-5, 6e-5], [40.35878]);
    const [first] = torsionalModes(chain, { count: 1 });
    within(first!.frequency / (2 * Math.PI), 261.062, 2e-6);
    expect(first!.nodes).toHaveLength(1);
    within(first!.nodes[0]!.at, 0.75 * chain.shafts[0]!.length, 1e-9);
    within(first!.nodes[0]!.station, 0.75 * chain.shafts[0]!.length, 1e-9);
    const propeller = { blades: 3, diameter: 0.04, pitch: 0.04 };
    const [wet] = torsionalModes({ ...chain, propeller }, { count: 1 });
    within(wet!.frequency / (2 * Math.PI), 254.452, 2e-6);
    const given = { ...propeller, wetInertiaFactor: 1 };
    within(
      torsionalModes({ ...chain, propeller: given }, { count: 1 })[0]!.frequency,
      first!.frequency,
      1e-12,
    );
  });

  it('of a disc on a shaft whose own inertia counts: β tan β = Jₛ/J_d', () => {
    // 20 kg·m² on 20 mm × 1 m, ρ 7800, G 80 GPa, other end held: 7.926647, 10061.155, 20122.3 rad/s (derived; inputs of a
    // textbook problem). Held is a rotor of 1e9 kg·m².
    const material = { ...steel, density: 7800, shearModulus: 80e9 };
    const shaft = shaftOf({
      length: 1,
      outerDiameter: 0.02,
      material,
      discs: [discOf({ at: 1, polarInertia: 20 })],
    });
    const modes = torsionalModes({ ...lineOf([shaft]), motor: rotor(1e9) }, { count: 3 });
    [7.926647, 10061.155, 20122.3].forEach((frequency, i) => {
      within(modes[i]!.frequency, frequency, 5e-7);
    });
  });

  it('of a bare bar, free at both ends: nπ/L √(G/ρ), with nodes at the odd parts', () => {
    // W. T. Thomson, "Theory of Vibration with Applications", §8.3: closed form
    const shaft = shaftOf({ length: 0.5 });
    const modes = torsionalModes(lineOf([shaft]), { count: 6 });
    modes.forEach(({ frequency, nodes }, i) => {
      const waves = i + 1;
      within(frequency, (waves * Math.PI * Math.sqrt(steel.shearModulus / steel.density)) / 0.5, 1e-11);
      expect(nodes).toHaveLength(waves);
      nodes.forEach(({ at }, k) => {
        // told between places a sixteenth of a wave or less apart
        expect(Math.abs(at - (0.5 * (2 * k + 1)) / (2 * waves))).toBeLessThan(1e-3 * 0.5);
      });
    });
  });

  it.each(referenceChains)('agrees with a fine chain in scipy: $name', (chain) => {
    const modes = torsionalModes(lineOfChain(chain), { count: 4 });
    modes.forEach(({ frequency }, i) => {
      // the reference is extrapolated from 120 and 240 pieces a shaft
      within(frequency, chain.frequencies[i]!, 1e-6);
    });
  });

  it('keeps the node in a soft joint, and leaves the turning of the whole out', () => {
    const shafts = [
      shaftOf({ length: 0.1, outerDiameter: 0.02 }),
      shaftOf({ length: 0.1, outerDiameter: 0.02 }),
    ];
    const line = lineOf(shafts, [jointOf({ torsionalStiffness: 10 })]);
    const [first] = torsionalModes(line, { count: 1 });
    expect(first!.nodes).toEqual([{ shaft: 0, at: 0.1, station: 0.1 }]);
    // two equal bars as lumps J on a spring k: √(2k/J) within the bars' own give
    const inertia = (steel.density * Math.PI * 0.02 ** 4 * 0.1) / 32;
    within(first!.frequency, Math.sqrt(20 / inertia), 2e-3);
  });

  it('scales: half the size turns the frequency up twofold', () => {
    const scale = (line: ShaftLine, s: number): ShaftLine => ({
      ...line,
      shafts: line.shafts.map((shaft) => ({
        ...shaft,
        length: s * shaft.length,
        outerDiameter: s * shaft.outerDiameter,
        innerDiameter: s * shaft.innerDiameter,
        discs: shaft.discs.map((disc) => ({
          ...disc,
          at: s * disc.at,
          polarInertia: s ** 5 * disc.polarInertia,
        })),
      })),
    });
    fc.assert(
      fc.property(extremeLine, (line) => {
        const full = torsionalModes(line, { count: 3 });
        const half = torsionalModes(scale(line, 0.5), { count: 3 });
        full.forEach(({ frequency }, i) => {
          within(half[i]!.frequency, 2 * frequency, 1e-7);
        });
      }),
      { numRuns: 40 },
    );
  });

  it('ascends, finds as many as asked, and each has as many nodes as its number', () => {
    fc.assert(
      fc.property(extremeLine, (line) => {
        const modes = torsionalModes(line, { count: 4 });
        expect(modes).toHaveLength(4);
        modes.forEach(({ frequency, nodes, shape }, i) => {
          if (i > 0) expect(frequency).toBeGreaterThan(modes[i - 1]!.frequency);
          expect(nodes).toHaveLength(i + 1);
          expect(Math.max(...shape.angle)).toBe(1);
          expect(shape.angle.every(Number.isFinite)).toBe(true);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('turns down a count that is none', () => {
    expect(() => torsionalModes(exampleLine(), { count: 0 })).toThrow(
      'torsionalModes: count must be a whole number from 1 to 50, got 0',
    );
  });
});

describe('torsionalCriticals', () => {
  it('are the modes over the orders', () => {
    const line = exampleLine();
    const modes = torsionalModes(line, { count: 2 });
    const found = torsionalCriticals(line, { orders: [1, 2.5], count: 2 });
    expect(found).toHaveLength(4);
    found.forEach(({ order, mode, speed, frequency, source }) => {
      expect(frequency).toBe(modes[mode - 1]!.frequency);
      expect(speed * order).toBeCloseTo(frequency, 9);
      expect(source).toBe('asked');
    });
    expect(found.map(({ speed }) => speed)).toEqual(found.map(({ speed }) => speed).sort((a, b) => a - b));
  });

  it('looks at what the line drives itself', () => {
    const line = exampleLine();
    const orders = torsionalCriticals(line, { count: 1 }).map(({ order, source }) => `${order} ${source}`);
    expect(orders.sort()).toEqual(['2 joints', '4 blades', '4 joints']);
    const { propeller: wheel, ...bare } = line;
    expect(wheel?.blades).toBe(4);
    const straight = { ...bare, shafts: bare.shafts.map((shaft) => ({ ...shaft, elevation: 0 })) };
    expect(torsionalCriticals(straight)).toEqual([]);
  });

  it('turns down an order of nought', () => {
    expect(() => torsionalCriticals(exampleLine(), { orders: [2, 0] })).toThrow(
      'torsionalCriticals: orders[1] must be a finite number greater than 0, got 0',
    );
  });
});
