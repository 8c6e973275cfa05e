import { lineAxes, type AxisMeasures, type AxisStation, type LineAxes, type Measure } from '@sternline/core';
import type { MeasuredPoints, PointKey, Reading } from './measures.js';

/** What measured points come to: axes, or what is still to be measured, or why they cannot be. */
export type PointsOutcome =
  | { readonly kind: 'axes'; readonly axes: LineAxes }
  | { readonly kind: 'missing'; readonly missing: readonly PointKey[] }
  | { readonly kind: 'problem'; readonly sentence: string };

/**
 * The axes that measured points give.
 *
 * @param points - as far as they were measured
 * @param bends - at how many joints the line bends: 1 or 2
 */
export function measuredAxes(points: MeasuredPoints, bends: number): PointsOutcome {
  const missing = missingPoints(points, bends);
  if (missing.length > 0) return { kind: 'missing', missing };
  const sentence = closeStations(points) ?? (bends === 2 ? jointOrder(points) : undefined);
  if (sentence) return { kind: 'problem', sentence };
  try {
    return { kind: 'axes', axes: lineAxes(axisMeasures(points, bends)) };
  } catch (error) {
    return { kind: 'problem', sentence: error instanceof Error ? error.message : String(error) };
  }
}

const AXES = ['motor', 'tube'] as const;
const VIEWS = ['height', 'offset'] as const;

/** Places along the keel are always wanted; a view only where one of its two stations has it, and one view in all. */
function missingPoints(points: MeasuredPoints, bends: number): PointKey[] {
  const lacks = (key: PointKey): boolean => points[key]?.value === undefined;
  const places: PointKey[] = ['motor-1-at', 'motor-2-at', 'tube-1-at', 'tube-2-at'];
  const joints: PointKey[] = bends === 2 ? ['joint-1-at', 'joint-2-at'] : [];
  const views = AXES.flatMap((axis) =>
    VIEWS.flatMap((view): PointKey[] => {
      const both: PointKey[] = [`${axis}-1-${view}`, `${axis}-2-${view}`];
      const lacking = both.filter(lacks);
      return lacking.length === 1 ? lacking : [];
    }),
  );
  const none = AXES.every((axis) => VIEWS.every((view) => lacks(`${axis}-1-${view}`)));
  const heights: PointKey[] = none
    ? ['motor-1-height', 'motor-2-height', 'tube-1-height', 'tube-2-height']
    : [];
  return [...places.filter(lacks), ...joints.filter(lacks), ...views, ...heights.filter(lacks)];
}

function closeStations(points: MeasuredPoints): string | undefined {
  for (const axis of AXES) {
    const first = points[`${axis}-1-at`];
    const second = points[`${axis}-2-at`];
    const apart = Math.abs((second?.value ?? 0) - (first?.value ?? 0));
    if (apart <= (first?.tolerance ?? 0) + (second?.tolerance ?? 0)) {
      return `The two stations of the ${axis}’s axis are no further apart than their tolerances: measure them as far apart as the ${axis} allows.`;
    }
  }
  return undefined;
}

function jointOrder(points: MeasuredPoints): string | undefined {
  const first = points['joint-1-at'];
  const second = points['joint-2-at'];
  const apart = (second?.value ?? 0) - (first?.value ?? 0);
  if (apart > (first?.tolerance ?? 0) + (second?.tolerance ?? 0)) return undefined;
  return 'The second joint must lie aft of the first, by more than both tolerances.';
}

function axisMeasures(points: MeasuredPoints, bends: number): AxisMeasures {
  const stations = (axis: (typeof AXES)[number]): readonly [AxisStation, AxisStation] => [
    station(points, `${axis}-1`),
    station(points, `${axis}-2`),
  ];
  const motor = measure(points['joint-1-at']);
  const tube = measure(points['joint-2-at']);
  return {
    motor: stations('motor'),
    tube: stations('tube'),
    ...(bends === 2 && motor && tube ? { joints: { motor, tube } } : {}),
  };
}

function station(points: MeasuredPoints, name: `${'motor' | 'tube'}-${1 | 2}`): AxisStation {
  const height = measure(points[`${name}-height`]);
  const offset = measure(points[`${name}-offset`]);
  return {
    at: measure(points[`${name}-at`]) ?? { value: NaN, tolerance: 0 },
    ...(height ? { height } : {}),
    ...(offset ? { offset } : {}),
  };
}

function measure(reading: Reading | undefined): Measure | undefined {
  if (reading?.value === undefined) return undefined;
  return { value: reading.value, tolerance: reading.tolerance };
}
