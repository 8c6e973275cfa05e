import { propellerDisc, type DrawableLine, type DrawableShaft } from './line-parts.js';

/** A place or a direction: x aft along the keel, y to port, z up. */
export interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** m, the room that a line takes. */
export interface Extent {
  readonly from: Vector;
  readonly to: Vector;
}

/**
 * The motor's own size is not part of a line: its outline is drawn dashed, over its bearings, with these multiples of its
 * shaft's diameter for its height and for its reach beyond the bearings.
 */
const MOTOR = { height: 6, reach: 1.6, alone: 8 };
/** m, the motor's outline: from where to where along its shaft, and how high. */
export interface MotorSpan {
  readonly from: number;
  readonly to: number;
  readonly height: number;
}

/** The motor's outline, over the bearings of its shaft. */
export function motorSpan({ supports, outerDiameter }: DrawableShaft): MotorSpan {
  const bearings = supports.map(({ at }) => at);
  const reach = MOTOR.reach * outerDiameter;
  const height = MOTOR.height * outerDiameter;
  if (bearings.length === 0) return { from: -MOTOR.alone * outerDiameter, to: 0, height };
  return { height, from: Math.min(0, ...bearings) - reach, to: Math.max(...bearings) + reach };
}

/** Which way a shaft points. */
export function direction({ elevation, plan }: DrawableShaft): Vector {
  return {
    x: Math.cos(elevation) * Math.cos(plan),
    y: Math.cos(elevation) * Math.sin(plan),
    z: Math.sin(elevation),
  };
}

/** A place on a shaft that starts at `start`; `at` in m from its motor end. */
export function along(start: Vector, shaft: DrawableShaft, at: number): Vector {
  const to = direction(shaft);
  return { x: start.x + at * to.x, y: start.y + at * to.y, z: start.z + at * to.z };
}

/** Motor end of each shaft; the first stands at the origin. */
export function shaftStarts(line: DrawableLine): Vector[] {
  const starts: Vector[] = [];
  let place: Vector = { x: 0, y: 0, z: 0 };
  for (const shaft of line.shafts) {
    starts.push(place);
    place = along(place, shaft, shaft.length);
  }
  return starts;
}

/** The room that a line takes, with its motor and propeller. */
export function extentOf(line: DrawableLine, starts: readonly Vector[]): Extent {
  const balls = line.shafts.flatMap((shaft, index) => {
    const start = starts[index] ?? { x: 0, y: 0, z: 0 };
    const radius = Math.max(shaft.outerDiameter, shaft.tubeBore ?? 0) * 1.5;
    return [0, shaft.length].map((at) => ({ place: along(start, shaft, at), radius }));
  });
  const [first] = line.shafts;
  if (first && line.motor) {
    balls.push({
      place: along({ x: 0, y: 0, z: 0 }, first, motorSpan(first).from),
      radius: motorSpan(first).height / 2,
    });
  }
  const last = line.shafts.at(-1);
  const end = starts.at(-1);
  if (last && end && line.propeller) {
    const at = last.discs[propellerDisc(line)]?.at ?? last.length;
    balls.push({ place: along(end, last, at), radius: line.propeller.diameter / 2 });
  }
  const bound = (axis: keyof Vector, sign: 1 | -1) =>
    sign * Math.max(...balls.map((ball) => sign * ball.place[axis] + ball.radius));
  return {
    from: { x: bound('x', -1), y: bound('y', -1), z: bound('z', -1) },
    to: { x: bound('x', 1), y: bound('y', 1), z: bound('z', 1) },
  };
}

/** m, how far an extent reaches along one axis. */
export function span({ from, to }: Extent, axis: keyof Vector): number {
  return Math.max(1e-3, to[axis] - from[axis]);
}
