import { checkNotNegative } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import type { WhirlModel } from './build-whirl-model.js';
import { largestRadius, steadyWhirl, type SteadyOrder } from './steady-whirl.js';
import type { WhirlOrder, WhirlResponse, WhirlResponseOptions } from './types.js';

/**
 * The steady whirl of a line through a range of speeds, driven by unbalance, bent shafts, joint couples or other turning forces.
 *
 * An excitation of order n drives (K ± nΩ²G − (nΩ)²M + inΩC) q = f, + forward and − backward, solved at every speed. Unbalance is
 * f = uΩ² at each disc, u its `unbalance`, else what balance grade G16 leaves it at that speed, u = m·16 mm/s/Ω; a bent shaft, by its `runout`, what it takes to straighten its arc; a universal joint ½T tan β
 * on the driving and ½T sin β on the driven shaft at twice the speed.
 *
 * @param line - a checked line
 * @param options - `speeds` in rad/s, each at least 0; `damping`, modal as a share of critical, default 0.02, and of the bushes in
 *   N·s/m, default 0; `excitations`, default unbalance and bow with all phases 0, which is as bad as they can add
 * @returns for each speed the displacement of every node in m, by order and all together, and the largest in each tube
 * @throws RangeError for an option out of its domain, or for joint couples where a universal joint stands at 90° or more
 * @throws MechanismError if a part of the line is free to move
 * @remarks Linear: nothing stops the shaft at the wall of its tube, see `contactSpeed`. All damping stands still in the hull
 *   (bushes, water, tube); that in the material of a shaft turns with it and takes nothing from a whirl of the first order. An ideal
 *   joint under an even torque drives forward whirl alone; play and a pulsing torque turn part of it round, at most all of
 *   it: ask with `whirl: 'backward'`. The steady half of its couple bends the line but whirls nothing.
 * @example
 * const { tubes } = whirlResponse(exampleLine(), { speeds: [0, 400, 790] });
 * tubes[0].clearance // → 0.0010 m
 * Array.from(tubes[0].radius, (radius) => 1e6 * radius) // → [9, 7, 133]
 * @see W. T. Thomson, "Theory of Vibration with Applications", §3.3 and §3.4 (rotating unbalance, whirling of shafts); the bow as
 *   in A. Dimarogonas, "Vibration for Engineers", ch. 13 (from memory); joint couples derived
 */
export function whirlResponse(line: ShaftLine, options: WhirlResponseOptions): WhirlResponse {
  const speeds = Float64Array.from(options.speeds);
  if (speeds.length === 0) throw refusal('whirlResponse: speeds', 'one speed or more', options.speeds);
  speeds.forEach((speed, i) => {
    checkNotNegative(`whirlResponse: speeds[${i}]`, speed);
  });
  const { damping, excitations } = options;
  const fastest = speeds.reduce((most, speed) => Math.max(most, speed), 0);
  const steady = steadyWhirl(line, { damping, excitations, fastest }, 'whirlResponse');
  const steps = Array.from(speeds, (speed) => steady.at(speed));
  const { mesh } = steady.model;
  const orders = (steps[0] ?? []).map((_, which) => orderOf(steady.model, steps, which));
  return {
    speeds,
    shaft: mesh.shaft,
    at: mesh.at,
    station: mesh.station,
    orders,
    radius: steps.map((_, i) => added(mesh.at.length, orders, i)),
    tubes: steady.tubes.map(({ shaft, clearance, points }) => ({
      shaft,
      clearance,
      radius: Float64Array.from(steps, (step) => largestRadius(step, points)),
    })),
  };
}

function orderOf(model: WhirlModel, steps: readonly (readonly SteadyOrder[])[], which: number): WhirlOrder {
  const { displacement } = model.freedoms;
  const rows = steps.map((step) => {
    const motion = step[which]?.motion;
    const part = (values?: Float64Array): Float64Array =>
      Float64Array.from(displacement, (row) => (row < 0 ? 0 : (values?.[row] ?? 0)));
    return { real: part(motion?.real), imaginary: part(motion?.imaginary) };
  });
  return {
    order: steps[0]?.[which]?.order ?? 1,
    whirl: steps[0]?.[which]?.whirl ?? 'forward',
    amplitude: rows.map(({ real, imaginary }) =>
      real.map((value, i) => Math.sqrt(value ** 2 + (imaginary[i] ?? 0) ** 2)),
    ),
    phase: rows.map(({ real, imaginary }) => real.map((value, i) => Math.atan2(imaginary[i] ?? 0, value))),
  };
}

function added(nodes: number, orders: readonly WhirlOrder[], step: number): Float64Array {
  const sum = new Float64Array(nodes);
  for (const { amplitude } of orders) {
    for (let node = 0; node < nodes; node++) sum[node] = (sum[node] ?? 0) + (amplitude[step]?.[node] ?? 0);
  }
  return sum;
}
