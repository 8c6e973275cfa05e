import { max, rollup, scaleLinear } from 'd3';

/** Speeds not to dwell in, in the ruler's unit. */
export interface RulerBand {
  readonly from: number;
  readonly to: number;
  readonly order: number;
  /** What stands at the band. */
  readonly label: string;
  /** What more the read-out says of it. */
  readonly note?: string;
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
  readonly name: { readonly x: number; readonly text: string } | undefined;
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
  readonly limit: number;
  /** Whether the limit lies beyond the axis, and stands at its end. */
  readonly limitBeyond: boolean;
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
  const most = rollup(input.levels, (levels) => max(levels, ({ amplitude }) => amplitude) ?? 0, likeness);
  return {
    axis,
    ticks: makeTicks(scale, room.width),
    lanes,
    bands: nameBands(
      input.bands
        .filter((band) => band.from < input.top)
        .map((band) => drawBand(band, { scale, lane: lane(band.order), top: input.top })),
      room.width - RIGHT,
    ),
    levels: input.levels.flatMap((level) => {
      const place = lane(level.order);
      if (!place || level.speed > input.top) return [];
      const share = Math.sqrt(level.amplitude / (most.get(likeness(level)) ?? 0) || 0);
      const radius = Math.min(2.5 + 3 * share, place.height / 2);
      return [{ ...level, x: scale(level.speed), y: place.y + place.height / 2, radius }];
    }),
    wanted: scale(input.wanted),
    limit: scale(Math.min(input.limit, input.top)),
    limitBeyond: input.limit > input.top,
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

/** Only levels of one order in one unit are compared with each other. */
function likeness({ order, unit }: RulerLevel): string {
  return `${order} ${unit}`;
}

type Scale = ReturnType<typeof scaleLinear<number>>;

function layoutLanes({ bands, levels }: RulerInput, axis: number): Ruler['lanes'] {
  const shown = [...bands, ...levels.filter(({ seen }) => seen)];
  const orders = [...new Set(shown.map(({ order }) => order))].sort((a, b) => a - b).slice(0, 6);
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
  readonly top: number;
}

function drawBand(band: RulerBand, { scale, lane, top }: BandPlace): Omit<DrawnBand, 'name'> {
  const x = scale(band.from);
  const width = Math.max(2, scale(band.to) - x);
  const y = (lane?.y ?? 0) + 2;
  return {
    ...band,
    x,
    y,
    width,
    height: Math.max(4, (lane?.height ?? 8) - 4),
    lines: band.marks.filter((mark) => mark <= top).map((mark) => scale(mark)),
  };
}

// At the band's right, else at its left, else across it: a name covers hatching, or another band, only if it must,
// and gives way where even that would cover a name.
function nameBands(bands: readonly Omit<DrawnBand, 'name'>[], room: number): DrawnBand[] {
  const taken = bands.map(({ x, width, y }) => ({ from: x, to: x + width, y }));
  return bands.map((band) => {
    const length = band.label.length * LETTER;
    const own = taken.filter(({ y }) => y === band.y);
    const free = (from: number) =>
      from >= LEFT &&
      from + length <= room &&
      own.every((other) => other.to <= from - 3 || other.from >= from + length + 3);
    const right = band.x + band.width + 5;
    const left = band.x - 5 - length;
    const inside = band.x + (band.width - length) / 2;
    const from = free(right) ? right : free(left) ? left : band.width > length + 8 ? inside : undefined;
    if (from === undefined) return { ...band, name: undefined };
    if (from !== inside) taken.push({ from, to: from + length, y: band.y });
    return { ...band, name: { x: from, text: band.label } };
  });
}
