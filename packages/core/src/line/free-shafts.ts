import type { Joint, Shaft } from './types.js';

/** Shafts that can move sideways together while nothing bends. */
export interface FreePart {
  /** Index of the first shaft that moves. */
  readonly first: number;
  /** Index of the last. */
  readonly last: number;
  /** How it moves, to complete "is free to …". */
  readonly motion: string;
}

/** What of a line decides whether it is held sideways. */
export interface HeldLine {
  readonly shafts: readonly Pick<Shaft, 'length' | 'supports'>[];
  readonly joints: readonly Pick<Joint, 'kind' | 'bendingStiffness'>[];
}

/** Pivots and motions below this share of the largest are rounding. */
const ROUNDING = 1e-10;

/**
 * The parts of a line that nothing holds: the motions of its shafts, as rigid bodies, that every support and joint allows.
 *
 * In the developed line each shaft has two unknowns, the sideways displacements of its ends. A support, rigid or
 * elastic, holds the displacement where it stands; one that fixes or resists the slope makes both ends move alike; every joint
 * ties two ends; a rigid one, or a flexible one with a bending stiffness, ties the slopes as well. What is left is the null space of these rows.
 *
 * @param line - lengths in m, supports, and kinds of joints
 * @returns the free parts from the motor end; none where the line is held
 * @remarks A flexible joint without a bending stiffness is a hinge. The motor's own bearings
 *   are supports of its shaft and must be among them.
 */
export function freeShafts(line: HeldLine): FreePart[] {
  const motions = nullSpace(restraints(line), 2 * line.shafts.length);
  const moving = line.shafts.map((_, shaft) =>
    motions.some(
      (motion) => Math.max(Math.abs(motion[2 * shaft] ?? 0), Math.abs(motion[2 * shaft + 1] ?? 0)) > ROUNDING,
    ),
  );
  const parts: FreePart[] = [];
  moving.forEach((moves, shaft) => {
    if (!moves || moving[shaft - 1]) return;
    const end = moving.indexOf(false, shaft);
    const last = end === -1 ? moving.length - 1 : end - 1;
    parts.push({ first: shaft, last, motion: describeMotion(line, [shaft, last], motions) });
  });
  return parts;
}

function restraints(line: HeldLine): number[][] {
  const rows: number[][] = [];
  const add = (coefficients: Readonly<Record<number, number>>): void => {
    rows.push(Array.from({ length: 2 * line.shafts.length }, (_, column) => coefficients[column] ?? 0));
  };
  line.shafts.forEach(({ length, supports }, shaft) => {
    const [start, end] = [2 * shaft, 2 * shaft + 1];
    for (const { at, fixesSlope, angularStiffness } of supports) {
      add({ [start]: 1 - at / length, [end]: at / length });
      if (fixesSlope || angularStiffness) add({ [start]: -1, [end]: 1 });
    }
  });
  line.joints.forEach((joint, index) => {
    const [start, end, nextStart, nextEnd] = [2 * index, 2 * index + 1, 2 * index + 2, 2 * index + 3];
    add({ [end]: 1, [nextStart]: -1 });
    const before = line.shafts[index]?.length ?? 1;
    const after = line.shafts[index + 1]?.length ?? 1;
    const [a, b] = [Math.min(1, after / before), Math.min(1, before / after)];
    if (!isHinge(joint)) add({ [start]: -a, [end]: a, [nextStart]: b, [nextEnd]: -b });
  });
  return rows;
}

function isHinge({ kind, bendingStiffness = 0 }: HeldLine['joints'][number]): boolean {
  return kind === 'universal' || (kind === 'flexible' && bendingStiffness === 0);
}

/** A basis of the vectors that all rows annul, by elimination with complete pivoting. */
function nullSpace(rows: number[][], columns: number): number[][] {
  const order = Array.from({ length: columns }, (_, column) => column);
  let rank = 0;
  for (; rank < Math.min(rows.length, columns); rank++) {
    const pivot = largest(rows, order, rank);
    if (pivot.size <= ROUNDING) break;
    swap(rows, rank, pivot.row);
    swap(order, rank, pivot.place);
    clearColumn(rows, order[rank] ?? 0, rank);
  }
  return order.slice(rank).map((free) => {
    const vector = new Array<number>(columns).fill(0);
    vector[free] = 1;
    for (let i = 0; i < rank; i++) vector[order[i] ?? 0] = -(rows[i]?.[free] ?? 0);
    return vector;
  });
}

function largest(
  rows: number[][],
  order: number[],
  from: number,
): { size: number; row: number; place: number } {
  let best = { size: 0, row: from, place: from };
  for (let row = from; row < rows.length; row++) {
    for (let place = from; place < order.length; place++) {
      const size = Math.abs(rows[row]?.[order[place] ?? 0] ?? 0);
      if (size > best.size) best = { size, row, place };
    }
  }
  return best;
}

function swap(list: unknown[], i: number, j: number): void {
  [list[i], list[j]] = [list[j], list[i]];
}

/** Scales the pivot's row to 1 and takes it from all others. */
function clearColumn(rows: number[][], column: number, pivot: number): void {
  const divisor = rows[pivot]?.[column] ?? 1;
  const pivotRow = (rows[pivot] ?? []).map((value) => value / divisor);
  rows[pivot] = pivotRow;
  rows.forEach((row, index) => {
    const factor = row[column] ?? 0;
    if (index === pivot || factor === 0) return;
    rows[index] = row.map((value, j) => value - factor * (pivotRow[j] ?? 0));
  });
}

function describeMotion(
  line: HeldLine,
  [first, last]: readonly [number, number],
  motions: number[][],
): string {
  const part = motions
    .map((motion) => motion.slice(2 * first, 2 * last + 2))
    .filter((motion) => motion.some((value) => Math.abs(value) > ROUNDING));
  const hinges = hingesOf(line, first, last);
  if (last > first) return hinges === '' ? 'move sideways' : `move sideways, bending at ${hinges}`;
  const [motion] = part;
  if (part.length > 1 || !motion) return 'move sideways and swing';
  const [start = 0, end = 0] = motion;
  const length = line.shafts[first]?.length ?? 1;
  if (Math.abs(end - start) <= ROUNDING) return 'move sideways';
  const share = start / (start - end);
  if (Math.abs(share) <= ROUNDING && first > 0) return `swing about joints[${first - 1}]`;
  if (Math.abs(share - 1) <= ROUNDING && last < line.shafts.length - 1) return `swing about joints[${last}]`;
  return `swing about its support at ${Number((share * length).toPrecision(6))} m`;
}

function hingesOf(line: HeldLine, first: number, last: number): string {
  const hinges = line.joints.flatMap((hinge, joint) =>
    isHinge(hinge) && joint >= first - 1 && joint <= last ? [`joints[${joint}]`] : [],
  );
  return hinges.join(' and ');
}
