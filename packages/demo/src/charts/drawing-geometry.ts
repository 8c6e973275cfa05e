import { lineParts, type DrawableLine, type DrawableShaft, type LinePart } from './line-parts.js';
import { along, direction, extentOf, motorSpan, shaftStarts, span, type Vector } from './line-space.js';
import { spread } from './spread.js';

/** A place on the drawing, in pixels. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A shape in its own frame: `x` along the shaft, `y` across it; the frame stands at `origin`, turned by `turn`. */
export interface Placed {
  readonly part: string;
  readonly origin: Spot;
  /** degrees, clockwise on the screen */
  readonly turn: number;
}

export interface DrawnShaft extends Placed {
  readonly length: number;
  readonly thickness: number;
  readonly tube?: { readonly from: number; readonly to: number; readonly thickness: number };
  readonly bushes: readonly {
    readonly part: string;
    readonly at: number;
    readonly length: number;
    readonly height: number;
  }[];
  readonly discs: readonly { readonly part: string; readonly at: number; readonly height: number }[];
  readonly propeller?: {
    readonly part: string;
    readonly at: number;
    readonly radius: number;
    readonly blades: number;
  };
}

export interface DrawnJoint extends Placed {
  readonly kind: string;
  readonly radius: number;
  /** degrees, direction of the shaft after it */
  readonly turnAfter: number;
}

export interface DrawnMotor extends Placed {
  readonly length: number;
  readonly height: number;
}

export interface DrawnView {
  readonly name: 'side' | 'plan';
  /** px, where the keel axis runs in this view. */
  readonly keel: number;
  readonly shafts: readonly DrawnShaft[];
  readonly joints: readonly DrawnJoint[];
  readonly motor?: DrawnMotor;
}

/** The numbered mark of a part: a balloon in the row at the top and the part it leads to. */
export interface Balloon extends LinePart {
  readonly number: number;
  readonly x: number;
  readonly target: Spot;
}

export interface Drawing {
  /** px per m, the same along and across */
  readonly scale: number;
  readonly views: readonly DrawnView[];
  readonly balloons: readonly Balloon[];
  /** A round length to read distances by. */
  readonly bar: { readonly length: number; readonly pixels: number };
}

export interface DrawingRoom {
  readonly width: number;
  readonly height: number;
  /** px, height of the row of balloons at the top */
  readonly balloonRow: number;
  /** px, least distance between balloons */
  readonly apart: number;
  /** m, of which the scale bar is a round number */
  readonly barUnit: number;
}

type View = DrawnView['name'];

const MARGIN = 14;
const GAP = 18;

/**
 * Lays a shaft line out to scale: side view over plan view, with the same scale along and across, on one keel axis.
 *
 * @param line - the line
 * @param room - px, what there is to draw in
 * @returns everything to draw, in pixels
 */
export function layoutDrawing(line: DrawableLine, room: DrawingRoom): Drawing {
  const starts = shaftStarts(line);
  const extent = extentOf(line, starts);
  const size = { x: span(extent, 'x'), y: span(extent, 'y'), z: span(extent, 'z') };
  const free = { width: room.width - 2 * MARGIN, height: room.height - room.balloonRow - GAP - MARGIN };
  const scale = Math.max(1, Math.min(free.width / size.x, free.height / (size.y + size.z)));
  const left = (room.width - size.x * scale) / 2 - extent.from.x * scale;
  const spare = Math.max(0, free.height - (size.y + size.z) * scale);
  const sideKeel = room.balloonRow + spare / 3 + extent.to.z * scale;
  const planKeel = sideKeel - extent.from.z * scale + GAP + spare / 3 + extent.to.y * scale;
  const frames: Frame[] = [
    { view: 'side', scale, left, keel: sideKeel },
    { view: 'plan', scale, left, keel: planKeel },
  ];
  return {
    scale,
    views: frames.map((frame) => drawView(line, { starts, frame })),
    balloons: placeBalloons(line, { starts, frame: frames[0], room }),
    bar: scaleBar(scale, { most: room.width / 5, unit: room.barUnit }),
  };
}

interface Frame {
  readonly view: View;
  readonly scale: number;
  readonly left: number;
  readonly keel: number;
}

// Port is drawn upward in the plan, up is drawn upward in the side view.
function project(place: Vector, { view, scale, left, keel }: Frame): Spot {
  return { x: left + place.x * scale, y: keel - (view === 'side' ? place.z : place.y) * scale };
}

function turnOf(shaft: DrawableShaft, view: View): number {
  const to = direction(shaft);
  return (-Math.atan2(view === 'side' ? to.z : to.y, to.x) * 180) / Math.PI;
}

/** How much of a length along the shaft shows in a view. */
function shortening(shaft: DrawableShaft, view: View): number {
  const to = direction(shaft);
  return Math.hypot(to.x, view === 'side' ? to.z : to.y);
}

interface Pose {
  readonly starts: readonly Vector[];
  readonly frame: Frame;
}

function drawView(line: DrawableLine, pose: Pose): DrawnView {
  const { frame } = pose;
  const motor = drawMotor(line, pose);
  return {
    name: frame.view,
    keel: frame.keel,
    shafts: line.shafts.map((_, index) => drawShaft(line, { ...pose, index })),
    joints: line.joints.map((_, index) => drawJoint(line, { ...pose, index })),
    ...(motor ? { motor } : {}),
  };
}

function drawMotor(line: DrawableLine, { frame }: Pose): DrawnMotor | undefined {
  const [shaft] = line.shafts;
  if (!line.motor || !shaft) return undefined;
  const shown = frame.scale * shortening(shaft, frame.view);
  const { from, to, height } = motorSpan(shaft);
  return {
    part: 'motor',
    origin: project(along({ x: 0, y: 0, z: 0 }, shaft, to), frame),
    turn: turnOf(shaft, frame.view),
    length: (to - from) * shown,
    height: height * frame.scale,
  };
}

interface Indexed extends Pose {
  readonly index: number;
}

function drawShaft(line: DrawableLine, { starts, frame, index }: Indexed): DrawnShaft {
  const shaft = line.shafts[index];
  const start = starts[index];
  if (!shaft || !start) throw new RangeError(`drawShaft: index must be that of a shaft, got ${index}`);
  const parts = lineParts(line).filter((part) => part.shaft === index);
  const shown = frame.scale * shortening(shaft, frame.view);
  const across = frame.scale;
  const thickness = Math.max(2, shaft.outerDiameter * across);
  const hull = Math.max(thickness + 4, (shaft.tubeBore ?? 0) * across + 3);
  const bushes = parts.filter((part) => part.kind === 'support');
  const ends = bushes.map((part) => part.at);
  const tube = shaft.tubeBore !== undefined && ends.length > 1;
  const propeller = parts.find((part) => part.kind === 'propeller');
  return {
    part: `shaft-${index}`,
    origin: project(start, frame),
    turn: turnOf(shaft, frame.view),
    length: shaft.length * shown,
    thickness,
    ...(tube
      ? { tube: { from: Math.min(...ends) * shown, to: Math.max(...ends) * shown, thickness: hull } }
      : {}),
    bushes: bushes.map((part) => ({
      part: part.id,
      at: part.at * shown,
      length: Math.max(4, (shaft.supports[part.index]?.length ?? 2 * shaft.outerDiameter) * shown),
      height: hull + 3,
    })),
    discs: parts
      .filter((part) => part.kind === 'disc')
      .map((part) => ({ part: part.id, at: part.at * shown, height: thickness * 3 })),
    ...(propeller && line.propeller
      ? {
          propeller: {
            part: propeller.id,
            at: propeller.at * shown,
            radius: (line.propeller.diameter / 2) * across,
            blades: line.propeller.blades,
          },
        }
      : {}),
  };
}

function drawJoint(line: DrawableLine, { starts, frame, index }: Indexed): DrawnJoint {
  const before = line.shafts[index];
  const after = line.shafts[index + 1];
  const start = starts[index + 1];
  if (!before || !after || !start)
    throw new RangeError(`drawJoint: index must be that of a joint, got ${index}`);
  return {
    part: `joint-${index}`,
    kind: line.joints[index]?.kind ?? 'rigid',
    origin: project(start, frame),
    turn: turnOf(before, frame.view),
    turnAfter: turnOf(after, frame.view),
    radius: Math.max(5, 1.1 * Math.max(before.outerDiameter, after.outerDiameter) * frame.scale),
  };
}

function placeBalloons(
  line: DrawableLine,
  { starts, frame, room }: { starts: readonly Vector[]; frame: Frame | undefined; room: DrawingRoom },
): Balloon[] {
  if (!frame) return [];
  const targets = lineParts(line).map((part) => {
    const shaft = line.shafts[part.shaft];
    const start = starts[part.shaft];
    if (!shaft || !start) throw new RangeError(`placeBalloons: part ${part.id} must lie on a shaft`);
    const at = part.kind === 'motor' ? motorSpan(shaft).from : part.at;
    return { part, target: project(along(start, shaft, at), frame) };
  });
  const half = room.apart / 2;
  const places = spread(
    targets.map(({ target }) => target.x),
    { apart: room.apart, from: half, to: room.width - half },
  );
  return targets.map(({ part, target }, index) => ({
    ...part,
    number: index + 1,
    x: places[index] ?? target.x,
    target,
  }));
}

/** The longest of 1, 2, 5 × a power of ten of the unit that fits. */
function scaleBar(scale: number, { most, unit }: { most: number; unit: number }): Drawing['bar'] {
  const units = most / (scale * unit);
  const power = 10 ** Math.floor(Math.log10(units));
  const steps = [5, 2, 1].map((step) => step * power);
  const length = (steps.find((step) => step <= units) ?? power) * unit;
  return { length, pixels: length * scale };
}
