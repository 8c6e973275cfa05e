/*
 * welch on two minutes at 48 kHz against scipy's, in one run: see README.md here.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { welch } from '../packages/core/dist/index.js';
import { hum } from './sounds.mjs';

const RATE = 48_000;
const SECONDS = 120;
const LENGTHS = [1024, 4096, 16_384];
const ROUNDS = 9;
const TARGET = 0.5;

const samples = hum(SECONDS, RATE);
const { OPENBLAS_CORETYPE: _core, OPENBLAS_L2_SIZE: _cache, ...environment } = process.env;
const peer = spawnSync(
  'python3',
  [fileURLToPath(new URL('welch.py', import.meta.url)), String(RATE), String(ROUNDS), LENGTHS.join(',')],
  { input: new Uint8Array(samples.buffer), env: environment, encoding: 'utf8', maxBuffer: 1e8 },
);
if (peer.status !== 0) throw new Error(`welch.py failed: ${peer.stderr}`);
const { versions, runs } = JSON.parse(peer.stdout);

console.log(`welch, ${SECONDS} s at ${RATE} Hz (${versions})`);
for (const { segmentLength, seconds, density } of runs) {
  const ours = best(() => welch(samples, RATE, { segmentLength }), ROUNDS);
  const read = welch(samples, RATE, { segmentLength }).density;
  const apart = Math.max(...density.slice(2).map((value, k) => Math.abs(read[k + 2] / value - 1)));
  console.log(
    `  segments of ${String(segmentLength).padStart(6)}: ${ms(ours)}, scipy ${ms(seconds)}, ratio ${(ours / seconds).toFixed(2)} (wanted: ${TARGET}); densities differ by ${apart.toExponential(0)}`,
  );
}

function best(run, rounds) {
  let least = Infinity;
  for (let i = 0; i < rounds; i++) {
    const start = performance.now();
    run();
    least = Math.min(least, (performance.now() - start) / 1000);
  }
  return least;
}

function ms(seconds) {
  return `${(1000 * seconds).toFixed(0).padStart(5)} ms`;
}
