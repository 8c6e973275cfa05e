import type { Material } from '../line/types.js';

/** What a material stands before it breaks, at once and in the long run. */
export interface FatigueStrength {
  /** Pa */
  readonly tensileStrength: number;
  /** Polished specimen's endurance over tensile strength. */
  readonly enduranceShare: number;
  readonly source: string;
}

const STEEL = 0.5;

/** By the catalogue's names; low values of the usual bar, like its yields. */
const STRENGTHS: Readonly<Record<string, FatigueStrength>> = {
  'carbon steel': strength(440e6, STEEL, 'Shigley, table A-20, AISI 1018 cold drawn; §6-7 (from memory)'),
  'stainless steel 304': strength(500e6, STEEL, 'EN 10088-3, 1.4301 annealed; Shigley §6-7 (from memory)'),
  'stainless steel 316': strength(500e6, STEEL, 'EN 10088-3, 1.4401 annealed; Shigley §6-7 (from memory)'),
  brass: strength(340e6, 0.35, 'half-hard free-cutting rod; copper alloys 0.25 to 0.5 (from memory)'),
  'phosphor bronze': strength(410e6, 0.35, 'half-hard C51000; copper alloys 0.25 to 0.5 (from memory)'),
  'aluminium 6061-T6': strength(
    310e6,
    0.31,
    'ASM Metals Handbook: 310 MPa, 97 MPa at 5·10⁸ turns (from memory)',
  ),
  'titanium Ti-6Al-4V': strength(895e6, STEEL, 'ASM Metals Handbook, annealed (from memory)'),
};

/** Of a material that the catalogue does not have, yield stands for tensile strength, which errs to the safe side. */
export function fatigueStrength({ name, yieldStrength }: Material): FatigueStrength {
  return (
    STRENGTHS[name] ?? strength(yieldStrength, 0.4, 'yield taken for tensile strength; 0.4 of it, our choice')
  );
}

function strength(tensileStrength: number, enduranceShare: number, source: string): FatigueStrength {
  return { tensileStrength, enduranceShare, source };
}
