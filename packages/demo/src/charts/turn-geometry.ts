import { extent, line as lineShape, scaleLinear } from 'd3';

/** A curve over one turn of the motor, sampled at even steps from 0 to a whole turn, both ends included. */
export interface TurnInput {
  readonly values: ArrayLike<number>;
}

export interface TurnRoom {
  readonly width: number;
  readonly height: number;
}

export interface TurnFigure {
  readonly path: string;
  readonly left: number;
  readonly right: number;
  readonly base: number;
  readonly top: number;
  /** px of the value 1, where output and input turn alike. */
  readonly even: number;
  readonly xTicks: readonly { readonly x: number; readonly degrees: number }[];
  readonly yTicks: readonly { readonly y: number; readonly value: number }[];
  readonly highest: { readonly x: number; readonly y: number; readonly value: number };
  readonly lowest: { readonly x: number; readonly y: number; readonly value: number };
  /** Where the curve stands at a share of the turn. */
  readonly at: (share: number) => { readonly x: number; readonly y: number; readonly value: number };
  /** Share of the turn at a place across. */
  readonly share: (x: number) => number;
}

const MARGIN = { left: 52, right: 14, top: 22, bottom: 34 };
/** A swing smaller than this is drawn as the flat line it is, not blown up to fill the figure. */
const LEAST_SPAN = 0.002;

/**
 * Lays out the speed of the propeller against that of the motor over one turn.
 *
 * @param input - the curve
 * @param room - px
 */
export function layoutTurn({ values }: TurnInput, { width, height }: TurnRoom): TurnFigure {
  const list = Array.from(values);
  const count = Math.max(2, list.length);
  const [low = 1, high = 1] = extent(list);
  const spare = Math.max(0, LEAST_SPAN - (high - low)) / 2;
  const x = scaleLinear([0, 1], [MARGIN.left, width - MARGIN.right]).clamp(true);
  const y = scaleLinear(
    [Math.min(1, low) - spare, Math.max(1, high) + spare],
    [height - MARGIN.bottom, MARGIN.top],
  ).nice(4);
  const at = (share: number) => {
    const index = Math.min(count - 1, Math.max(0, Math.round(share * (count - 1))));
    const value = list[index] ?? 1;
    return { x: x(index / (count - 1)), y: y(value), value };
  };
  const share = (value: number) => list.indexOf(value) / (count - 1);
  const draw = lineShape<number>(
    (_, index) => x(index / (count - 1)),
    (value) => y(value),
  );
  return {
    path: draw(list) ?? '',
    left: MARGIN.left,
    right: width - MARGIN.right,
    base: height - MARGIN.bottom,
    top: MARGIN.top,
    even: y(1),
    xTicks: (width > 480 ? [0, 45, 90, 135, 180, 225, 270, 315, 360] : [0, 90, 180, 270, 360]).map(
      (degrees) => ({
        degrees,
        x: x(degrees / 360),
      }),
    ),
    yTicks: y.ticks(4).map((value) => ({ value, y: y(value) })),
    highest: at(share(high)),
    lowest: at(share(low)),
    at,
    share: (place) => x.invert(place),
  };
}
