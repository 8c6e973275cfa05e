import { refusal } from '../internal/refuse.js';
import { MATERIAL_SYNONYMS, MATERIALS } from './materials.js';
import { nearestName } from './nearest-name.js';
import type { Material } from './types.js';

/**
 * The material of the catalogue that has this name.
 *
 * @param name - a key of `MATERIALS` or a usual short form of one; case, spaces and hyphens do not count
 * @returns moduli and yield in Pa, density in kg/m³
 * @throws RangeError where the catalogue has no such name; it lists those it has, and the nearest
 * @remarks Where a family has several tempers, the yield is a low one: enter your own figures where strength decides.
 * @example
 * findMaterial('Brass').density // → 8540
 * findMaterial('stainless').name // → 'stainless steel 304'
 * findMaterial('carbon stel') // → throws did you mean "carbon steel"?
 * @see the sources stand beside the figures, in `materials.ts`
 */
export function findMaterial(name: string): Material {
  const found = BY_NAME.get(plain(name));
  if (found) return found;
  throw refusal('findMaterial: name', catalogueCondition(name), name);
}

/** What a name that the catalogue does not have should have been. */
export function catalogueCondition(name: string): string {
  const near = nearestName(name, [...Object.keys(MATERIALS), ...Object.keys(MATERIAL_SYNONYMS)]);
  const hint = near === undefined ? '' : ` (did you mean ${JSON.stringify(near)}?)`;
  return `a material of the catalogue: ${Object.keys(MATERIALS).join(', ')}${hint}`;
}

/** Whether the catalogue has this name. */
export function isCatalogued(name: string): boolean {
  return BY_NAME.has(plain(name));
}

function plain(name: string): string {
  return name.toLowerCase().replace(/[\s-]+/g, '');
}

const BY_NAME: ReadonlyMap<string, Material> = new Map([
  ...Object.values(MATERIALS).map((material): [string, Material] => [plain(material.name), material]),
  ...Object.entries(MATERIAL_SYNONYMS).map(([name, key]): [string, Material] => [
    plain(name),
    MATERIALS[key],
  ]),
]);
