/** A point of a picture, right and down from its middle. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A mass on a propeller seen from astern. */
export interface PlacedMass {
  /** kg, or any unit that all share. */
  readonly mass: number;
  /** rad, clockwise from blade 1, which stands up. */
  readonly angle: number;
}

/**
 * Where a point lies that is counted clockwise from the top.
 *
 * @param angle - rad
 * @param reach - from the middle
 */
export function clockSpot(angle: number, reach: number): Spot {
  return { x: reach * Math.sin(angle), y: -reach * Math.cos(angle) };
}

/** Half of a blade's width at root, widest place and shoulder, over its tip's distance. */
const WIDTHS = [0.1, 0.26, 0.22] as const;

/**
 * The outline of one blade, seen from astern.
 *
 * @param angle - rad, clockwise from the top
 * @param reach - of the tip, from the middle
 * @param hub - radius of the hub
 * @returns the path of an SVG
 */
export function bladePath(angle: number, { reach, hub }: { reach: number; hub: number }): string {
  const [root, widest, shoulder] = WIDTHS.map((width) => width * reach) as [number, number, number];
  const at = (across: number, out: number): string => {
    const x = across * Math.cos(angle) + out * Math.sin(angle);
    const y = across * Math.sin(angle) - out * Math.cos(angle);
    return `${tenths(x)} ${tenths(y)}`;
  };
  const middle = hub + 0.55 * (reach - hub);
  return [
    `M${at(-root, hub * 0.8)}`,
    `C${at(-widest, middle * 0.8)} ${at(-widest, middle)} ${at(-shoulder, reach * 0.86)}`,
    `Q${at(-shoulder * 0.6, reach)} ${at(0, reach)}`,
    `Q${at(shoulder * 0.6, reach)} ${at(shoulder, reach * 0.86)}`,
    `C${at(widest, middle)} ${at(widest, middle * 0.8)} ${at(root, hub * 0.8)}`,
    'Z',
  ].join('');
}

function tenths(value: number): string {
  return String(Math.round(10 * value) / 10 + 0);
}

/**
 * How large a mass is drawn: its area goes with it, beside the largest of the picture.
 *
 * @param mass - any unit
 * @param largest - in the same unit
 * @param reach - radius of the largest
 */
export function massReach(mass: number, { largest, reach }: { largest: number; reach: number }): number {
  if (!(largest > 0) || !(mass > 0)) return 0;
  return Math.max(2.5, reach * Math.sqrt(mass / largest));
}

/** What the construction with circles is drawn from. */
export interface CircleReadings {
  /** Amplitude as found. */
  readonly initial: number;
  /** Amplitude with the trial mass at each angle, rad. */
  readonly trials: readonly { readonly angle: number; readonly amplitude: number }[];
  /** Amplitude that the trial mass makes by itself. */
  readonly effect: number;
  /** rad, where the correction goes. */
  readonly angle: number;
}

/** One circle of the construction. */
export interface DrawnCircle {
  readonly centre: Spot;
  readonly radius: number;
  /** Where its name stands: on its far side. */
  readonly label: Spot;
}

export interface CircleDrawing {
  /** The middle of the first circle, from the upper left corner. */
  readonly middle: Spot;
  readonly height: number;
  /** Radius of the first circle. */
  readonly base: number;
  /** This and all that follows from the middle. */
  readonly circles: readonly DrawnCircle[];
  /** Where the circles meet. */
  readonly meeting: Spot;
  /** On the first circle, in the direction of the correction. */
  readonly correction: Spot;
}

/**
 * The four circles of balancing without phase: one about the middle for the run as found; on it, at the angle of each trial
 * run, the middle of a circle for that run's amplitude. They meet where the trial mass would have to point.
 *
 * |P − A₀ e^{jφᵢ}| = Aᵢ for P = t e^{jθ}, with t what the trial mass makes by itself and θ the angle of the correction
 *
 * @param readings - amplitudes in one unit
 * @param sheet - width of the picture, the edge that is left about the circles, and the most height
 */
export function balanceCircles(
  { initial, trials, effect, angle }: CircleReadings,
  { width, edge, most }: { readonly width: number; readonly edge: number; readonly most: number },
): CircleDrawing {
  const reaches = [
    { x: 0, y: 0, radius: initial },
    ...trials.map((trial) => ({ ...clockSpot(trial.angle, initial), radius: trial.amplitude })),
  ];
  const left = Math.min(...reaches.map(({ x, radius }) => x - radius));
  const right = Math.max(...reaches.map(({ x, radius }) => x + radius));
  const top = Math.min(...reaches.map(({ y, radius }) => y - radius));
  const bottom = Math.max(...reaches.map(({ y, radius }) => y + radius));
  const scale = Math.min((width - 2 * edge) / (right - left), (most - 2 * edge) / (bottom - top));
  return {
    middle: { x: width / 2 - (scale * (left + right)) / 2, y: edge - scale * top },
    height: scale * (bottom - top) + 2 * edge,
    base: initial * scale,
    circles: trials.map((trial) => ({
      centre: clockSpot(trial.angle, initial * scale),
      radius: trial.amplitude * scale,
      label: clockSpot(trial.angle, (initial + trial.amplitude) * scale),
    })),
    meeting: clockSpot(angle, effect * scale),
    correction: clockSpot(angle, initial * scale),
  };
}
