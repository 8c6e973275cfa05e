/*
 * assess on the example line and on a larger one: see README.md here.
 */
import { assess, exampleLine, lineWhirl } from '../packages/core/dist/index.js';
import { bestOf, medianOf, microseconds } from './measure.mjs';
import { threeJoints } from './lines.mjs';

const EXCITATIONS = [
  { order: 1 },
  { order: 2, whirl: 'backward' },
  { order: 2 },
  { order: 4, whirl: 'backward' },
  { order: 4 },
];

for (const line of [exampleLine(), threeJoints()]) {
  const run = () => assess(line, { speed: 345 });
  const whirl = () => lineWhirl(line, EXCITATIONS);
  console.log(`assess, ${line.name}`);
  console.log(
    `  assess          best ${microseconds(bestOf(run))}   median ${microseconds(medianOf(run))} (wanted: under 1000 µs)`,
  );
  console.log(
    `  of it, whirl    best ${microseconds(bestOf(whirl))}   median ${microseconds(medianOf(whirl))}`,
  );
}
