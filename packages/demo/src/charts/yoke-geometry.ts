/** A direction: aft along the keel, to port, up. */
export type Direction = readonly [aft: number, port: number, up: number];

/** The joints of a line as far as their yokes are concerned. */
export interface YokeLine {
  /** Unit directions of the shafts, motor end first; one more than joints. */
  readonly shafts: readonly Direction[];
  /** rad, for each shaft: from the pin at its motor end to that at its propeller end. */
  readonly twists: readonly number[];
  /** For each joint, whether it is a universal joint. */
  readonly universal: readonly boolean[];
}

/** A point seen along the driving shaft, looking aft: to port is right, up is up; 1 is half the length of a pin. */
export interface Seen {
  readonly right: number;
  readonly up: number;
}

/** One joint end-on. */
export interface YokeView {
  readonly joint: number;
  /** One end of the pin that the driving yoke holds; the other is opposite. */
  readonly driving: Seen;
  /** One end of the pin that the driven yoke holds, shortened as it leans out of the picture. */
  readonly driven: Seen;
}

/**
 * The yokes of every universal joint of a line at one angle of the motor shaft, seen along each driving shaft.
 *
 * The driven pin of a joint is square to its own driving pin and to the driven shaft; so the pins are followed through the
 * line one by one. At angle 0 the first driving pin is square to the plane of the two shafts of its joint.
 *
 * @param line - directions, twists and kinds
 * @param turn - rad, of the motor shaft; positive from port upwards
 */
export function yokeViews({ shafts, twists, universal }: YokeLine, turn: number): YokeView[] {
  const views: YokeView[] = [];
  const first = universal.indexOf(true);
  const [driving, driven] = [shafts[first], shafts[first + 1]];
  if (!driving || !driven) return views;
  let pin = rotated(bendNormal(driving, driven), driving, turn);
  for (let joint = first; joint < universal.length; joint++) {
    const before = shafts[joint];
    const behind = shafts[joint + 1];
    if (!before || !behind) break;
    if (universal[joint] === true) {
      const other = unit(cross(behind, pin));
      views.push({ joint, driving: seenAlong(before, pin), driven: seenAlong(before, other) });
      pin = other;
    }
    pin = rotated(pin, behind, twists[joint + 1] ?? 0);
  }
  return views;
}

function bendNormal(driving: Direction, driven: Direction): Direction {
  const normal = cross(driving, driven);
  if (size(normal) > 1e-9) return unit(normal);
  return unit(squareTo(driving, [0, 0, 1]));
}

/** Port and up as far as they lie square to the direction of sight. */
function seenAlong(sight: Direction, point: Direction): Seen {
  const right = unit(squareTo(sight, [0, 1, 0]));
  const up = unit(squareTo(right, squareTo(sight, [0, 0, 1])));
  return { right: dot(point, right), up: dot(point, up) };
}

function rotated(vector: Direction, about: Direction, angle: number): Direction {
  const across = cross(about, vector);
  const along = dot(about, vector) * (1 - Math.cos(angle));
  const part = (i: 0 | 1 | 2) => vector[i] * Math.cos(angle) + across[i] * Math.sin(angle) + about[i] * along;
  return [part(0), part(1), part(2)];
}

function squareTo(direction: Direction, vector: Direction): Direction {
  const along = dot(direction, vector);
  return [
    vector[0] - along * direction[0],
    vector[1] - along * direction[1],
    vector[2] - along * direction[2],
  ];
}

function cross(a: Direction, b: Direction): Direction {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function dot(a: Direction, b: Direction): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function size(vector: Direction): number {
  return Math.sqrt(dot(vector, vector));
}

function unit(vector: Direction): Direction {
  const length = size(vector) || 1;
  return [vector[0] / length, vector[1] / length, vector[2] / length];
}
