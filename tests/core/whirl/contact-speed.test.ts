import { describe, expect, it } from 'vitest';
import { contactSpeed, whirlResponse, type ShaftLine } from '@sternline/core';
import {
  discOf,
  lineOf,
  shaftOf,
  steel,
  uniformShaft,
  weightlessSteel,
  withoutShear,
} from '../../support/lines.js';

/** k 100 kN/m and 10 kg in the middle of a weightless shaft: 100 rad/s. */
function jeffcott(eccentricity: number, clearance?: number): ShaftLine {
  const length = 0.5;
  const bending = (1e5 * length ** 3) / 48;
  const outerDiameter = ((bending * 64) / (Math.PI * steel.youngsModulus)) ** 0.25;
  const line = withoutShear(
    uniformShaft(['pinned', 'pinned'], {
      length,
      outerDiameter,
      material: weightlessSteel,
      discs: [discOf({ at: length / 2, mass: 10, unbalance: 10 * eccentricity })],
    }),
  );
  const [shaft] = line.shafts;
  if (clearance === undefined) return line;
  return lineOf([{ ...shaft!, tubeBore: shaft!.outerDiameter + 2 * clearance }]);
}

/** Where e r²/√((1 − r²)² + (2ζr)²) = c: r⁴ (1 − (e/c)²) − (2 − 4ζ²) r² + 1 = 0 (derived). */
function edges(ratio: number, damping: number): [number, number] {
  const a = 1 - ratio ** 2;
  const b = 2 - 4 * damping ** 2;
  const root = Math.sqrt(b * b - 4 * a);
  return [Math.sqrt((b - root) / (2 * a)), Math.sqrt((b + root) / (2 * a))];
}

describe('contactSpeed', () => {
  it.each([
    [1e-4, 1e-3, 0.02],
    [1e-4, 2e-3, 0.02],
    [1e-5, 1e-3, 0.004],
    [2e-4, 3e-4, 0.2],
  ])('of a disc %f off centre in %f of clearance, ζ %f: both roots of the closed form', (e, c, zeta) => {
    const contact = contactSpeed(jeffcott(e, c), {
      to: 300,
      damping: { modal: zeta },
      excitations: [{ kind: 'unbalance' }],
    });
    const [from, to] = edges(e / c, zeta);
    expect(contact.tubes).toHaveLength(1);
    expect(contact.tubes[0]!.bands).toHaveLength(1);
    const [band] = contact.tubes[0]!.bands;
    expect(Math.abs(band!.from / (100 * from) - 1)).toBeLessThan(1e-5);
    expect(Math.abs(band!.to / (100 * to) - 1)).toBeLessThan(1e-5);
    expect(contact.speed).toBe(band!.from);
  });

  it('is never reached where the peak e/2ζ√(1 − ζ²) is lower', () => {
    const contact = contactSpeed(jeffcott(1e-4, 3e-3), { to: 300, excitations: [{ kind: 'unbalance' }] });
    expect(contact.speed).toBe(Infinity);
    expect(contact.tubes[0]!.bands).toEqual([]);
  });

  it('takes a disc without an unbalance for one of balance grade G16 at each speed', () => {
    // ISO 21940-11: e = 16 mm/s / Ω, so that the peak of e r²/√((1 − r²)² + (2ζr)²) near r 1 is 0.16 mm / 2ζ = 4 mm
    const untold = (line: ShaftLine): ShaftLine => ({
      ...line,
      shafts: line.shafts.map((shaft) => ({
        ...shaft,
        discs: shaft.discs.map(({ name, at, mass, polarInertia, diametralInertia }) => ({
          name,
          at,
          mass,
          polarInertia,
          diametralInertia,
        })),
      })),
    });
    const options = { to: 300, excitations: [{ kind: 'unbalance' }] } as const;
    expect(contactSpeed(untold(jeffcott(0, 5e-3)), options).speed).toBe(Infinity);
    const { speed, driven } = contactSpeed(untold(jeffcott(0, 2e-3)), options);
    expect(driven).toBe(true);
    // closed form at the speed found: e of that speed
    const [from] = edges(0.016 / speed / 2e-3, 0.02);
    expect(Math.abs(speed / (100 * from) - 1)).toBeLessThan(1e-5);
  });

  it('tells a line that nothing drives from one that never touches', () => {
    const bare = uniformShaft(['pinned', 'pinned'], { tubeBore: 0.0054 });
    expect(contactSpeed(bare, { to: 100 })).toMatchObject({ speed: Infinity, driven: false });
    const never = contactSpeed(jeffcott(1e-4, 3e-3), { to: 300 });
    expect(never).toMatchObject({ speed: Infinity, driven: true });
    expect(contactSpeed(jeffcott(1e-4, 3e-3), { to: 300, excitations: [] }).driven).toBe(false);
    // an even balance by entry is no missing one
    expect(contactSpeed(jeffcott(0, 3e-3), { to: 300 }).driven).toBe(false);
  });

  it('begins at no speed where the shaft is bent wider than its tube', () => {
    const line = uniformShaft(['pinned', 'pinned'], { runout: 5e-4, tubeBore: 0.0054 });
    expect(contactSpeed(line, { to: 10 }).speed).toBe(0);
  });

  it('finds the whirl just as wide as the clearance at the edges of its bands', () => {
    const shafts = [
      shaftOf({ length: 0.06, supports: [{ at: 0.01 }, { at: 0.045 }] }),
      shaftOf({
        length: 0.35,
        elevation: 0.25,
        runout: 1e-4,
        tubeBore: 0.0054,
        supports: [{ at: 0.02 }, { at: 0.31 }],
        discs: [
          discOf({ at: 0.35, mass: 0.05, unbalance: 3e-6, polarInertia: 8e-6, diametralInertia: 4e-6 }),
        ],
      }),
    ];
    const options = {
      damping: { modal: 0.01 },
      excitations: [
        { kind: 'unbalance' },
        { kind: 'bow' },
        { kind: 'joints', torque: 0.1, torqueSpeed: 500 },
      ],
    } as const;
    const { tubes } = contactSpeed(lineOf(shafts), { to: 2000, ...options });
    const speeds = tubes[0]!.bands.flatMap(({ from, to }) => [from, to]).filter((speed) => speed < 2000);
    expect(speeds.length).toBeGreaterThan(1);
    const response = whirlResponse(lineOf(shafts), { speeds, ...options });
    // the two meshes may differ, each within 1e-4 of a resonance
    for (const radius of response.tubes[0]!.radius) expect(Math.abs(radius / 2e-4 - 1)).toBeLessThan(1e-2);
  });

  it('leaves the overhang beyond the bushes alone', () => {
    const line = (tubeBore: number): ShaftLine =>
      lineOf([
        shaftOf({
          length: 0.4,
          tubeBore,
          supports: [{ at: 0 }, { at: 0.1 }],
          discs: [discOf({ at: 0.4, mass: 0.1, unbalance: 1e-3 })],
        }),
      ]);
    const { radius, tubes } = whirlResponse(line(0.007), { speeds: [20] });
    expect(Math.max(...radius[0]!)).toBeGreaterThan(20 * tubes[0]!.radius[0]!);
  });

  it('refuses a line without a tube, and no range', () => {
    expect(() => contactSpeed(jeffcott(1e-4), { to: 100 })).toThrow(
      new RangeError(
        'contactSpeed: line must be a line with a shaft that turns in a tube (tubeBore), got an object',
      ),
    );
    expect(() => contactSpeed(jeffcott(1e-4, 1e-3), { to: 0 })).toThrow(
      new RangeError('contactSpeed: to must be a finite number greater than 0, got 0'),
    );
  });
});
