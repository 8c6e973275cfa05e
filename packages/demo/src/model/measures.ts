import type { CouplingReadings } from '@sternline/core';

/** A length read off a ruler, m, and the most that it may be off, m; without a value, not read yet. */
export interface Reading {
  readonly value?: number;
  readonly tolerance: number;
}

/** m, what a ruler in the hull may be off. Common practice. */
export const RULER_TOLERANCE = 0.0005;

type Axis = 'motor' | 'tube';
type Station = 1 | 2;
type View = 'at' | 'height' | 'offset';

/** Which measured point: `tube-2-height` is the height of the tube's axis at its second station. */
export type PointKey = `${Axis}-${Station}-${View}` | 'joint-1-at' | 'joint-2-at';

/** Points measured on the axes of motor and tube. */
export type MeasuredPoints = Readonly<Partial<Record<PointKey, Reading>>>;

/** How a motor was measured against the shaft that it drives. */
export type ShimMethod = CouplingReadings['kind'];

/** Readings at the coupling, by their path in the core's readings: `rim.top`, `feet.rear`; m. */
export interface ShimReadings {
  readonly method: ShimMethod;
  readonly values: Readonly<Record<string, number>>;
}

/** What the tube has to pass through. */
export interface DrillingPlan {
  /** m, outside. */
  readonly tubeDiameter?: number;
  /** m aft, of bulkheads square to the keel. */
  readonly bulkheads: readonly number[];
  /** Of the hull's bottom where the tube comes out. */
  readonly hull?: HullStation;
}

/** A piece of the hull's bottom, taken as flat. */
export interface HullStation {
  /** m aft */
  readonly at?: number;
  /** m above the keel line, straight above or below the tube's axis. */
  readonly height?: number;
  /** rad, positive where the bottom rises going aft. */
  readonly riseAft?: number;
  /** rad, positive where it rises to port. */
  readonly riseToPort?: number;
}

/** What was measured in the hull for a line, and what was settled beside its shape. */
export interface LineMeasures {
  readonly points?: MeasuredPoints;
  readonly shims?: ShimReadings;
  readonly drilling?: DrillingPlan;
  /** Teeth of the spline that the yokes of an inner shaft sit on; absent where they turn freely. */
  readonly splineTeeth?: number;
  /** N·m that turning the shaft by hand takes: bushes and seal. */
  readonly friction?: number;
}

/** The name of every point, in the order in which it is asked for. */
export const POINT_KEYS: readonly PointKey[] = [
  ...(['motor', 'tube'] as const).flatMap((axis) =>
    ([1, 2] as const).flatMap((station) =>
      (['at', 'height', 'offset'] as const).map((view): PointKey => `${axis}-${station}-${view}`),
    ),
  ),
  'joint-1-at',
  'joint-2-at',
];
