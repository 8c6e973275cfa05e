import { jointBend } from '../line/joint-bend.js';
import type { ShaftLine } from '../line/types.js';
import type { StaticBeam } from './build-static-beam.js';
import { developedFrame } from '../line/developed-frame.js';
import { jointPhases } from '../line/joint-phases.js';
import { noLoad, type BeamLoad } from './load-beam.js';

/** A load in both planes of the developed line; its real and imaginary parts as a complex one. */
export interface PlaneLoad {
  readonly port: BeamLoad;
  readonly up: BeamLoad;
}

/** The couples of all joints: what stands still, and what turns at twice the speed with and against the shaft. */
export interface CoupleLoads {
  readonly mean: PlaneLoad;
  readonly forward: PlaneLoad;
  readonly backward: PlaneLoad;
}

/**
 * The couples of the universal joints as moments on the ends of their shafts.
 *
 * With ν the direction of the joint's normal, A = T tan β / 2 and B = T sin β / 2, the moment in the sense of the slope (as a
 * complex number, port and up) is e^{iν} A (1 + e^{2iθ}) on the driving shaft and
 * e^{iν} (B − (A + B)/2 e^{2iθ} + (A − B)/2 e^{−2iθ}) on the driven one.
 *
 * @see derived: with the driving pin p = cos θ n + sin θ u × n, the normal of the cross is along v − p (p · v)
 */
export function coupleLoads(line: ShaftLine, beam: StaticBeam, torque: number): CoupleLoads {
  const empty = (): PlaneLoad => ({ port: noLoad(beam), up: noLoad(beam) });
  const loads = { mean: empty(), forward: empty(), backward: empty() };
  const frame = developedFrame(line);
  jointPhases(line).forEach((joint, i) => {
    const from = line.shafts[i];
    const to = line.shafts[i + 1];
    if (!joint || !from || !to) return;
    const normal = jointBend(from, to).normalBefore + (frame[i] ?? 0);
    const a = (torque * Math.tan(joint.angle)) / 2;
    const b = (torque * Math.sin(joint.angle)) / 2;
    const behind = beam.firstNode[i + 1] ?? 0;
    const ahead = behind - 1;
    const turned = 2 * joint.phase;
    push(loads.mean, ahead, { size: a, direction: normal });
    push(loads.forward, ahead, { size: a, direction: normal + turned });
    push(loads.mean, behind, { size: b, direction: normal });
    push(loads.forward, behind, { size: -(a + b) / 2, direction: normal + turned });
    push(loads.backward, behind, { size: (a - b) / 2, direction: normal - turned });
  });
  return loads;
}

function push(
  { port, up }: PlaneLoad,
  node: number,
  { size, direction }: { readonly size: number; readonly direction: number },
): void {
  port.moment[node] = (port.moment[node] ?? 0) + size * Math.cos(direction);
  up.moment[node] = (up.moment[node] ?? 0) + size * Math.sin(direction);
}
