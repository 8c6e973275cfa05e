import type { ClockReadings, Vector3 } from '@sternline/core';

/*
 * A coupling simulated in space, with nothing of the rules of alignment in it: the driven shaft lies along the keel from
 * the origin aft; the motor's shaft runs through any point in any direction. A dial is a stem on a bracket that one
 * shaft carries round; what it shows is how far the stem has to give way before it meets the other hub.
 */
export interface Pose {
  /** m: where the motor's axis goes through the plane x = 0, to port and up. */
  readonly port: number;
  readonly up: number;
  /** Slopes of the motor's axis going aft. */
  readonly toPort: number;
  readonly rising: number;
}

interface Frame {
  readonly origin: Vector3;
  readonly axis: Vector3;
  /** Square to the axis: to port and upwards. */
  readonly port: Vector3;
  readonly up: Vector3;
}

const add = (a: Vector3, b: Vector3, f = 1): Vector3 => [a[0] + f * b[0], a[1] + f * b[1], a[2] + f * b[2]];
const dot = (a: Vector3, b: Vector3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const scale = (a: Vector3, f: number): Vector3 => [a[0] * f, a[1] * f, a[2] * f];
const unit = (a: Vector3) => scale(a, 1 / Math.hypot(...a));

function frameOf(origin: Vector3, along: Vector3): Frame {
  const axis = unit(along);
  const up = unit(add([0, 0, 1], axis, -axis[2]));
  const port = unit(add(add([0, 1, 0], axis, -axis[1]), up, -dot([0, 1, 0], up)));
  return { origin, axis, port, up };
}

const driven: Frame = frameOf([0, 0, 0], [1, 0, 0]);
const motorOf = ({ port, up, toPort, rising }: Pose): Frame => frameOf([0, port, up], [1, toPort, rising]);

const PLACES = { top: [0, 1], bottom: [0, -1], port: [1, 0], starboard: [-1, 0] } as const;

function allRound(read: (outward: (frame: Frame) => Vector3) => number): ClockReadings {
  const at = (place: keyof typeof PLACES) => {
    const [port, up] = PLACES[place];
    return read((frame) => add(scale(frame.port, port), frame.up, up));
  };
  const zero = at('top');
  return {
    top: 0,
    bottom: at('bottom') - zero,
    port: at('port') - zero,
    starboard: at('starboard') - zero,
  };
}

/** A stem from far out towards the carrier's axis, in a plane square to it, meeting a round hub of the other shaft. */
function rimDial(carrier: Frame, hub: Frame, distanceAft: number): ClockReadings {
  const reach = 0.05;
  const radius = 0.02;
  return allRound((outward) => {
    const out = outward(carrier);
    const start = add(add(carrier.origin, carrier.axis, distanceAft), out, reach);
    // |start − t out − hub axis| = radius, the nearer root.
    const aside = (v: Vector3) => add(v, hub.axis, -dot(v, hub.axis));
    const p = aside(add(start, hub.origin, -1));
    const d = aside(scale(out, -1));
    const [a, b, c] = [dot(d, d), dot(p, d), dot(p, p) - radius ** 2];
    return -(-b - Math.sqrt(b * b - a * c)) / a;
  });
}

/** A stem along the carrier's axis going aft, meeting the forward face of the driven hub. */
function faceDial(carrier: Frame, diameter: number): ClockReadings {
  return allRound((outward) => {
    const start = add(add(carrier.origin, carrier.axis, -0.03), outward(carrier), diameter / 2);
    return start[0] / carrier.axis[0];
  });
}

export const simulate = {
  rimAndFace(pose: Pose, faceDiameter: number) {
    const motor = motorOf(pose);
    return { rim: rimDial(motor, driven, 0), face: faceDial(motor, faceDiameter) };
  },
  reverseIndicator(pose: Pose, separation: number) {
    const motor = motorOf(pose);
    return { onShaft: rimDial(motor, driven, 0), onMotor: rimDial(driven, motor, -separation) };
  },
  /** Hubs of different diameters, their faces 2 mm apart. */
  rulerAndFeeler(pose: Pose, faceDiameter: number) {
    const motor = motorOf(pose);
    const read = (of: (outward: (frame: Frame) => Vector3) => number) => ({
      top: of((frame) => frame.up),
      bottom: of((frame) => scale(frame.up, -1)),
      port: of((frame) => frame.port),
      starboard: of((frame) => scale(frame.port, -1)),
    });
    const centre = motor.origin;
    const step = read((outward) => dot(add(centre, outward(motor), 0.021), outward(driven)) - 0.02);
    const face = add(motor.origin, motor.axis, -0.002);
    const gap = read((outward) => -add(face, outward(motor), faceDiameter / 2)[0]);
    return { step, gap };
  },
};

interface Move {
  readonly vertical: number;
  readonly horizontal: number;
}

/** The motor after its feet, so far forward of x = 0, were moved. */
export function moved(
  pose: Pose,
  feet: { readonly front: number; readonly rear: number },
  moves: { readonly front: Move; readonly rear: Move },
): Pose {
  const { axis, origin } = motorOf(pose);
  const foot = (distance: number, { vertical, horizontal }: Move): Vector3 =>
    add(add(origin, axis, -distance), [0, horizontal, vertical]);
  const front = foot(feet.front, moves.front);
  const rear = foot(feet.rear, moves.rear);
  const along = add(front, rear, -1);
  const [toPort, rising] = [along[1] / along[0], along[2] / along[0]];
  return { toPort, rising, port: front[1] - toPort * front[0], up: front[2] - rising * front[0] };
}
