/** What the drawing needs to know of a shaft line; all lengths in m, angles in rad. */
export interface DrawableLine {
  readonly shafts: readonly DrawableShaft[];
  readonly joints: readonly { readonly kind: string }[];
  readonly motor?: unknown;
  readonly propeller?: { readonly blades: number; readonly diameter: number };
}

export interface DrawableShaft {
  readonly name: string;
  readonly length: number;
  readonly outerDiameter: number;
  readonly elevation: number;
  readonly plan: number;
  readonly tubeBore?: number;
  readonly supports: readonly { readonly at: number; readonly length?: number }[];
  readonly discs: readonly { readonly name: string; readonly at: number }[];
}

/** One part of the line that can be chosen. */
export interface LinePart {
  /** `motor`, `shaft-1`, `joint-0`, `support-1-0`, `disc-1-0`, `propeller`. */
  readonly id: string;
  readonly kind: 'motor' | 'shaft' | 'joint' | 'support' | 'disc' | 'propeller';
  readonly name: string;
  /** Index of its shaft; of the shaft before it for a joint. */
  readonly shaft: number;
  /** Place among its kind on that shaft. */
  readonly index: number;
  /** m from the motor end of that shaft. */
  readonly at: number;
}

/**
 * The parts of a line in order from the motor end, as the drawing numbers them.
 *
 * @param line - the line
 */
export function lineParts(line: DrawableLine): LinePart[] {
  const motor: LinePart[] = line.motor
    ? [{ id: 'motor', kind: 'motor', name: 'Motor', shaft: 0, index: 0, at: 0 }]
    : [];
  return [...motor, ...line.shafts.flatMap((shaft, index) => partsOfShaft(line, { shaft, index }))];
}

/** The part of that id; where there is none, the propeller shaft, for most of what matters is there. */
export function partOrMain(line: DrawableLine, id: string): string {
  return lineParts(line).some((part) => part.id === id) ? id : `shaft-${line.shafts.length - 1}`;
}

/** Which disc of the last shaft is the propeller: the one farthest aft, where the line has a propeller. */
export function propellerDisc(line: DrawableLine): number {
  const discs = line.propeller ? (line.shafts.at(-1)?.discs ?? []) : [];
  return discs.reduce((best, disc, index) => (disc.at >= (discs[best]?.at ?? -Infinity) ? index : best), -1);
}

interface Place {
  readonly shaft: DrawableShaft;
  readonly index: number;
}

function partsOfShaft(line: DrawableLine, { shaft, index }: Place): LinePart[] {
  const own: LinePart = {
    id: `shaft-${index}`,
    kind: 'shaft',
    name: upperFirst(shaft.name) || `Shaft ${index + 1}`,
    shaft: index,
    index,
    at: shaft.length / 2,
  };
  const carried = [own, ...supportParts(line, { shaft, index }), ...discParts(line, { shaft, index })];
  return [...carried.sort((a, b) => a.at - b.at), ...jointPart(line, { shaft, index })];
}

// Bushes are counted along the line, wherever they stand in the list; those of the motor's own shaft by themselves.
function supportParts(line: DrawableLine, { shaft, index }: Place): LinePart[] {
  const inMotor = index === 0 && line.motor !== undefined;
  const before = inMotor
    ? 0
    : line.shafts.slice(line.motor ? 1 : 0, index).reduce((sum, other) => sum + other.supports.length, 0);
  return shaft.supports.map((support, place) => {
    const rank = shaft.supports.filter(
      (other, i) => other.at < support.at || (other.at === support.at && i < place),
    );
    return {
      id: `support-${index}-${place}`,
      kind: 'support',
      name: `${inMotor ? 'Bearing' : 'Bush'} ${before + rank.length + 1}`,
      shaft: index,
      index: place,
      at: support.at,
    };
  });
}

function discParts(line: DrawableLine, { shaft, index }: Place): LinePart[] {
  const propeller = index === line.shafts.length - 1 ? propellerDisc(line) : -1;
  return shaft.discs.map((disc, place) => ({
    id: place === propeller ? 'propeller' : `disc-${index}-${place}`,
    kind: place === propeller ? 'propeller' : 'disc',
    name: upperFirst(disc.name) || (place === propeller ? 'Propeller' : 'Disc'),
    shaft: index,
    index: place,
    at: disc.at,
  }));
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function jointPart(line: DrawableLine, { shaft, index }: Place): LinePart[] {
  const joint = line.joints[index];
  if (!joint) return [];
  const several = line.joints.length > 1 ? ` ${index + 1}` : '';
  const name = joint.kind === 'universal' ? `Joint${several}` : `Coupling${several}`;
  return [{ id: `joint-${index}`, kind: 'joint', name, shaft: index, index, at: shaft.length }];
}
