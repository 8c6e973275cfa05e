/** Ten minutes of sound at 48 kHz, from bytes to samples and on to findings; and how the time grows. */
import { diagnose, estimateSpeed, readWav } from '../packages/core/dist/index.js';
import { fastest, wavFile } from './read-files.mjs';

const bytes = wavFile(600);
const read = fastest(() => readWav(bytes), 3);
const whole = fastest(findings, 3);
console.log(`readWav, ten minutes at 48 kHz: ${read.toFixed(2)} s`);
console.log(`readWav, estimateSpeed and diagnose: ${whole.toFixed(2)} s (wanted: under 3 s)`);
const minutes = [1, 2, 4, 8].map((count) => bytes.subarray(0, 44 + 2 * 48_000 * 60 * count));
const base = fastest(() => readWav(minutes[0]), 3);
minutes.slice(1).forEach((part, i) => {
  const seconds = fastest(() => readWav(part), 3);
  console.log(`  ${2 ** (i + 1)} times the sound: ${(seconds / base).toFixed(1)} times the time`);
});

/** From bytes to findings, the speed sought in the sound itself and, where it finds none, as made. */
function findings() {
  const recording = readWav(bytes);
  const { candidates = [] } = estimateSpeed(recording, { range: [2 * Math.PI * 20, 2 * Math.PI * 200] });
  return diagnose({ recording, speed: candidates[0]?.speed ?? 2 * Math.PI * 83 });
}
