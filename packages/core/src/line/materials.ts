import type { Material } from './types.js';

/*
 * Stiffness and density hardly vary within a family; yield does, with temper and size. Yields here are low ones of the
 * usual bar, so that a strength worked out from them errs to the safe side. Only isotropic materials: a wound
 * carbon-fibre tube has a shear modulus that no tensile test of it tells.
 */

/** Materials of model shafts, by the name that `parseShaftLine` takes. Moduli and yield in Pa, density in kg/m³. */
export const MATERIALS = {
  // Budynas and Nisbett, "Shigley's Mechanical Engineering Design", Table A-5, carbon steel: 207 GPa, 79.3 GPa,
  // 76.5 kN/m³; yield of cold-drawn AISI 1018, Table A-20: 370 MPa. From memory.
  'carbon steel': material('carbon steel', [207e9, 79.3e9, 7800, 370e6]),
  // EN 10088-1, 1.4301: 200 GPa, 7.9 kg/dm³; G with Poisson's ratio 0.3; EN 10088-3 annealed bar, Rp0.2 190 MPa. From memory.
  'stainless steel 304': material('stainless steel 304', [200e9, 76.9e9, 7900, 190e6]),
  // EN 10088-1, 1.4401: 200 GPa, 8.0 kg/dm³; G with Poisson's ratio 0.3; EN 10088-3 annealed bar, Rp0.2 200 MPa. From memory.
  'stainless steel 316': material('stainless steel 316', [200e9, 76.9e9, 8000, 200e6]),
  // Shigley, Table A-5, brass: 106 GPa, 40.1 GPa, 83.8 kN/m³; half-hard free-cutting rod, about 250 MPa. From memory.
  brass: material('brass', [106e9, 40.1e9, 8540, 250e6]),
  // Copper Development Association, C51000: 110 GPa, 41 GPa, 8.86 g/cm³; half-hard rod, about 350 MPa. From memory.
  'phosphor bronze': material('phosphor bronze', [110e9, 41e9, 8860, 350e6]),
  // ASM Metals Handbook, 6061-T6: 68.9 GPa, 26 GPa, 2.70 g/cm³, 276 MPa. From memory.
  'aluminium 6061-T6': material('aluminium 6061-T6', [68.9e9, 26e9, 2700, 276e6]),
  // ASM Metals Handbook, Ti-6Al-4V annealed: 113.8 GPa, 44 GPa, 4.43 g/cm³, 880 MPa. From memory.
  'titanium Ti-6Al-4V': material('titanium Ti-6Al-4V', [113.8e9, 44e9, 4430, 880e6]),
} as const satisfies Readonly<Record<string, Material>>;

/** Shorter and other usual names, each for the commonest of its family. */
export const MATERIAL_SYNONYMS: Readonly<Record<string, keyof typeof MATERIALS>> = {
  steel: 'carbon steel',
  stainless: 'stainless steel 304',
  'stainless steel': 'stainless steel 304',
  'stainless 304': 'stainless steel 304',
  'stainless 316': 'stainless steel 316',
  bronze: 'phosphor bronze',
  aluminium: 'aluminium 6061-T6',
  aluminum: 'aluminium 6061-T6',
  'aluminium 6061': 'aluminium 6061-T6',
  'aluminum 6061': 'aluminium 6061-T6',
  titanium: 'titanium Ti-6Al-4V',
};

type Figures = readonly [youngsModulus: number, shearModulus: number, density: number, yieldStrength: number];

function material(name: string, [youngsModulus, shearModulus, density, yieldStrength]: Figures): Material {
  return Object.freeze({ name, youngsModulus, shearModulus, density, yieldStrength });
}
