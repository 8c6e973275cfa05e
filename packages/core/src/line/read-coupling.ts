import type { ClockReadings, CouplingReadings, InBothPlanes } from './shim-types.js';

/** The motor's axis in one plane, as the readings have it. */
export interface PlaneLine {
  /** m, in the reference plane. */
  readonly offset: number;
  /** rad */
  readonly angularity: number;
  /** rad, its likely reach. */
  readonly angularityReach: number;
  /** m: likely reach of the place of the axis, so far forward of the reference plane. */
  readonly reachAt: (distance: number) => number;
}

type Plane = keyof InBothPlanes;

const SIDES = { vertical: ['top', 'bottom'], horizontal: ['port', 'starboard'] } as const;

/**
 * The motor's axis from the readings, in one plane: y(s) = offset − angularity · s, s forward of the reference plane.
 *
 * Half of what a rim dial shows between two opposite sides is the offset; of a face dial, over its diameter, the angle.
 * A dial carried by the motor counts up at the bottom where the motor is high; one carried by the other shaft, where
 * it is low.
 */
export function readCoupling(readings: CouplingReadings, plane: Plane): PlaneLine {
  const { tolerance = 0 } = readings;
  switch (readings.kind) {
    case 'rim-and-face': {
      const offset = difference(readings.rim, plane, readings.sag) / 2;
      const angularity = difference(readings.face, plane) / readings.faceDiameter;
      return apart({ offset, angularity }, [
        tolerance / Math.SQRT2,
        (tolerance * Math.SQRT2) / readings.faceDiameter,
      ]);
    }
    case 'reverse-indicator': {
      const { onShaft, onMotor, separation, sag } = readings;
      const offset = difference(onShaft, plane, sag) / 2;
      const atMotor = -difference(onMotor, plane, sag) / 2;
      return {
        offset,
        angularity: (offset - atMotor) / separation,
        angularityReach: tolerance / separation,
        reachAt: (s) => (tolerance / Math.SQRT2) * Math.hypot(1 - s / separation, s / separation),
      };
    }
    case 'ruler-and-feeler': {
      const [near, far] = SIDES[plane];
      const opposite = readings.step[far];
      const step = readings.step[near];
      const offset = opposite === undefined ? step : (step - opposite) / 2;
      const reach = opposite === undefined ? tolerance : tolerance / Math.SQRT2;
      const angularity = -difference(readings.gap, plane) / readings.faceDiameter;
      return apart({ offset, angularity }, [reach, (tolerance * Math.SQRT2) / readings.faceDiameter]);
    }
  }
}

/** What the dial shows on the far side (bottom, starboard) over the near one, its bracket's sag taken out. */
function difference(readings: ClockReadings, plane: Plane, sag = 0): number {
  const [near, far] = SIDES[plane];
  return readings[far] - readings[near] - (plane === 'vertical' ? sag : 0);
}

/** A line whose offset and angle are read apart from each other, with the reach of each. */
function apart(
  line: Pick<PlaneLine, 'offset' | 'angularity'>,
  [offsetReach, angularityReach]: readonly [number, number],
): PlaneLine {
  return { ...line, angularityReach, reachAt: (s) => Math.hypot(offsetReach, angularityReach * s) };
}
