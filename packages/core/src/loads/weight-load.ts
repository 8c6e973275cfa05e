import type { ShaftLine } from '../line/types.js';
import { nodeAt, type StaticBeam } from './build-static-beam.js';
import type { PlaneLoad } from './couple-loads.js';
import { developedFrame } from '../line/developed-frame.js';
import { noLoad } from './load-beam.js';

/** m/s², standard gravity. */
const GRAVITY = 9.80665;

/** Weight of shafts, discs and joints, dry, square to the line. */
export function weightLoad(line: ShaftLine, beam: StaticBeam): PlaneLoad {
  const load = { port: noLoad(beam), up: noLoad(beam) };
  const pulls = developedFrame(line).map((turn, i) => {
    const across = GRAVITY * Math.cos(line.shafts[i]?.elevation ?? 0);
    // straight down is −90° from the port horizontal
    return { port: across * Math.sin(turn), up: -across * Math.cos(turn) };
  });
  for (const plane of ['port', 'up'] as const) {
    const { force, spread } = load[plane];
    const pull = (shaft: number): number => pulls[shaft]?.[plane] ?? 0;
    beam.pieces.forEach(({ node }, i) => {
      const index = beam.shaft[node] ?? 0;
      const shaft = line.shafts[index];
      if (!shaft) return;
      const area = (Math.PI / 4) * (shaft.outerDiameter ** 2 - shaft.innerDiameter ** 2);
      spread[i] = area * shaft.material.density * pull(index);
    });
    line.shafts.forEach(({ discs }, shaft) => {
      for (const { at, mass } of discs) {
        const node = nodeAt(beam, shaft, at);
        force[node] = (force[node] ?? 0) + mass * pull(shaft);
      }
    });
    line.joints.forEach(({ mass }, i) => {
      const node = beam.firstNode[i + 1] ?? 0;
      force[node] = (force[node] ?? 0) + mass * pull(i + 1);
    });
  }
  return load;
}
