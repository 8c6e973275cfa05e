import { max, scaleLinear } from 'd3';

/** Speeds not to dwell in, in the ruler's unit. */
export interface RulerBand {
  readonly from: number;
  readonly to: number;
  readonly order: number;
  /** What stands at the band. */
  readonly label: string;
  /** Speeds in the band that are lines of their own. */
  readonly marks: readonly number[];
}

/** Measured level of an order at a speed. */
export interface RulerLevel {
  readonly speed: number;
  readonly order: number;
  readonly amplitude: number;
  readonly unit: string;
  readonly seen: boolean;
}

export interface RulerInput {
  readonly bands: readonly RulerBand[];
  readonly levels: readonly RulerLevel[];
  /** The right end of the axis. */
  readonly top: number;
  readonly wanted: number;
  readonly limit: number;
}

export interface RulerRoom {
  readonly width: number;
  readonly height: number;
}

export interface DrawnBand extends RulerBand {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly lines: readonly number[];
  /** Where its name begins; undefined where there is no room for one. */
  readonly name: { readonly x: number; readonly anchor: 'start' | 'end'; readonly text: string } | undefined;
}

export interface DrawnLevel extends RulerLevel {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

export interface Ruler {
  readonly axis: number;
  readonly ticks: readonly { readonly x: number; readonly value: number; readonly major: boolean }[];
  readonly lanes: readonly { readonly order: number; readonly y: number; readonly height: number }[];
  readonly bands: readonly DrawnBand[];
  readonly levels: readonly DrawnLevel[];
  readonly wanted: number;
  /** undefined where it lies beyond the axis */
  readonly limit: number | undefined;
  readonly x: (speed: number) => number;
  readonly speed: (x: number) => number;
}

/** Room left of the axis for the names of the lanes, and above and below the lanes, in px. */
const LEFT = 34;
const RIGHT = 16;
const TOP = 20;
const AXIS = 20;
const LETTER = 6.2;

/**
 * Lays the speed ruler out: a lane for each order over one axis of shaft speed.
 *
 * @param input - bands, levels and marks, all in the ruler's unit of speed
 * @param room - px
 */
export function layoutRuler(input: RulerInput, room: RulerRoom): Ruler {
  const scale = scaleLinear([0, input.top], [LEFT, Math.max(LEFT + 1, room.width - RIGHT)]).clamp(true);
  const axis = room.height - AXIS;
  const lanes = layoutLanes(input, axis);
  const lane = (order: number) => lanes.find((found) => found.order === order);
  const most = new Map(
    lanes.map(({ order }) => [
      order,
      max(input.levels, (level) => (level.order === order ? level.amplitude : 0)),
    ]),
  );
  return {
    axis,
    ticks: makeTicks(scale, room.width),
    lanes,
    bands: input.bands
      .filter((band) => band.from < input.top)
      .map((band) => drawBand(band, { scale, lane: lane(band.order), room: room.width - RIGHT })),
    levels: input.levels.flatMap((level) => {
      const place = lane(level.order);
      if (!place || level.speed > input.top) return [];
      const share = Math.sqrt(level.amplitude / (most.get(level.order) ?? level.amplitude) || 0);
      return [{ ...level, x: scale(level.speed), y: place.y + place.height / 2, radius: 2.5 + 2.5 * share }];
    }),
    wanted: scale(input.wanted),
    limit: input.limit <= input.top ? scale(input.limit) : undefined,
    x: scale,
    speed: (x) => scale.invert(x),
  };
}

/**
 * A round number at or above a speed, for the end of the axis.
 *
 * @param speed - greater than 0
 */
export function niceTop(speed: number): number {
  const [, top = speed] = scaleLinear([0, speed], [0, 1]).nice(10).domain();
  return top;
}

type Scale = ReturnType<typeof scaleLinear<number>>;

function layoutLanes({ bands, levels }: RulerInput, axis: number): Ruler['lanes'] {
  const orders = [...new Set([...bands, ...levels].map(({ order }) => order))]
    .sort((a, b) => a - b)
    .slice(0, 6);
  const height = (axis - TOP) / Math.max(1, orders.length);
  return orders.map((order, index) => ({ order, y: TOP + height * index, height }));
}

function makeTicks(scale: Scale, width: number): Ruler['ticks'] {
  const majors = new Set(scale.ticks(Math.max(3, Math.round(width / 90))));
  const minors = scale.ticks(majors.size * 5);
  return minors.map((value) => ({ value, x: scale(value), major: majors.has(value) }));
}

interface BandPlace {
  readonly scale: Scale;
  readonly lane: { readonly y: number; readonly height: number } | undefined;
  readonly room: number;
}

function drawBand(band: RulerBand, { scale, lane, room }: BandPlace): DrawnBand {
  const x = scale(band.from);
  const width = Math.max(2, scale(band.to) - x);
  const y = (lane?.y ?? 0) + 2;
  return {
    ...band,
    x,
    y,
    width,
    height: Math.max(4, (lane?.height ?? 8) - 4),
    lines: band.marks.filter((mark) => mark <= scale.invert(room)).map((mark) => scale(mark)),
    name: placeName(band.label, { from: x, to: x + width, room }),
  };
}

// At the band's right, else at its left, else inside it: a name never covers the hatching it names unless it must.
function placeName(
  text: string,
  { from, to, room }: { from: number; to: number; room: number },
): DrawnBand['name'] {
  const length = text.length * LETTER + 10;
  if (to + length <= room) return { x: to + 5, anchor: 'start', text };
  if (from - length >= LEFT) return { x: from - 5, anchor: 'end', text };
  return to - from >= length ? { x: from + 5, anchor: 'start', text } : undefined;
}
