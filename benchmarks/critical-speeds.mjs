/*
 * criticalSpeeds against scipy's dense eigensolver on the same matrices, in one run: see README.md here.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { criticalSpeeds } from '../packages/core/dist/index.js';
import { lowestEigenpairs } from '../packages/core/dist/numerics/lowest-eigenpairs.js';
import { combineBands } from '../packages/core/dist/numerics/combine-bands.js';
import { whirlSolver } from '../packages/core/dist/whirl/whirl-solver.js';
import { bestOf, full, microseconds } from './measure.mjs';
import { threeJoints } from './lines.mjs';

const MODES = 4;
const TARGET = 20;

const line = threeJoints();
const { model } = whirlSolver(line, 'benchmark').solve({ order: 1, whirl: 'forward', count: MODES });
const inertia = combineBands(model.mass, model.gyroscopic, -1);

const whole = bestOf(() => criticalSpeeds(line, { count: MODES }));
const solver = bestOf(() => lowestEigenpairs(model.stiffness, { inertia, count: MODES }));
const speeds = criticalSpeeds(line, { count: MODES }).map(({ speed }) => speed);

const { OPENBLAS_CORETYPE: _core, OPENBLAS_L2_SIZE: _cache, ...environment } = process.env;
const peer = spawnSync('python3', [fileURLToPath(new URL('critical-speeds.py', import.meta.url))], {
  input: JSON.stringify({ stiffness: full(model.stiffness), inertia: full(inertia), modes: MODES }),
  env: environment,
  encoding: 'utf8',
  maxBuffer: 1e8,
});
if (peer.status !== 0) throw new Error(`critical-speeds.py failed: ${peer.stderr}`);
const { seconds, omega, versions } = JSON.parse(peer.stdout);

const apart = Math.max(...speeds.map((speed, i) => Math.abs(speed / omega[i] - 1)));
const dense = Math.min(...Object.values(seconds));
console.log(
  `criticalSpeeds, ${MODES} modes, 5 supports, 3 joints, ${model.stiffness.size} unknowns (${versions})`,
);
console.log(`  criticalSpeeds, mesh and matrices included   ${microseconds(whole)}`);
console.log(`  its eigensolver alone                        ${microseconds(solver)}`);
for (const [name, time] of Object.entries(seconds)) console.log(`  ${name.padEnd(44)} ${microseconds(time)}`);
console.log(`  speeds differ by at most ${apart.toExponential(1)}`);
console.log(`  fastest dense over criticalSpeeds: ${(dense / whole).toFixed(1)} (wanted: ${TARGET})`);
console.log(`  fastest dense over its eigensolver: ${(dense / solver).toFixed(1)}`);
