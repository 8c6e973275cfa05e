import { findMaterial, MATERIALS } from '@sternline/core';
import { describe, expect, it } from 'vitest';

const waveSpeed = ({ youngsModulus, density }: { youngsModulus: number; density: number }) =>
  Math.sqrt(youngsModulus / density);

describe('MATERIALS', () => {
  // Critical speed of a bare rod goes with √(E/ρ): of steel's, brass has about 0.68, aluminium and titanium 1.0,
  // stainless steel 0.97. Workshop figures, common practice.
  it.each([
    ['brass', 0.68],
    ['aluminium 6061-T6', 1],
    ['titanium Ti-6Al-4V', 1],
    ['stainless steel 304', 0.97],
    ['stainless steel 316', 0.97],
  ] as const)('%s whirls at %f of the speed of steel', (name, share) => {
    expect(Math.abs(waveSpeed(MATERIALS[name]) / waveSpeed(MATERIALS['carbon steel']) - share)).toBeLessThan(
      0.025,
    );
  });

  // Metals lie between 0.25 and 0.36: any table of Poisson's ratio, from memory.
  it.each(Object.values(MATERIALS))(
    '$name has a Poisson ratio of a metal',
    ({ youngsModulus, shearModulus }) => {
      const ratio = youngsModulus / (2 * shearModulus) - 1;
      expect(ratio).toBeGreaterThan(0.25);
      expect(ratio).toBeLessThan(0.36);
    },
  );

  it('has each material under its own name, and cannot be written to', () => {
    for (const [key, material] of Object.entries(MATERIALS)) {
      expect(material.name).toBe(key);
      expect(Object.isFrozen(material)).toBe(true);
    }
  });
});

describe('findMaterial', () => {
  it('takes a name without regard to case, spaces and hyphens, and short forms', () => {
    expect(findMaterial('CARBON steel')).toBe(MATERIALS['carbon steel']);
    expect(findMaterial('titanium ti6al4v')).toBe(MATERIALS['titanium Ti-6Al-4V']);
    expect(findMaterial('stainless 316')).toBe(MATERIALS['stainless steel 316']);
    expect(findMaterial('aluminum')).toBe(MATERIALS['aluminium 6061-T6']);
  });

  const listed = 'carbon steel, stainless steel 304, stainless steel 316, brass, phosphor bronze, aluminium 6061-T6, titanium Ti-6Al-4V'; // prettier-ignore

  it('refuses any other, with the list and the nearest', () => {
    expect(() => findMaterial('carbon stel')).toThrow(
      new RangeError(
        `findMaterial: name must be a material of the catalogue: ${listed} (did you mean "carbon steel"?), got "carbon stel"`,
      ),
    );
    expect(() => findMaterial('unobtainium')).toThrow(
      new RangeError(`findMaterial: name must be a material of the catalogue: ${listed}, got "unobtainium"`),
    );
  });

  it('does not take the names that every object has', () => {
    for (const name of ['constructor', '__proto__', 'toString', ''])
      expect(() => findMaterial(name)).toThrow(RangeError);
  });
});
