/*
 * From samples to findings: a phone's motion, and sound of growing length. See README.md here.
 */
import { diagnose, estimateSpeed, exampleLine, findPeaks, trackOrders } from '../packages/core/dist/index.js';
import { hum, recordingOf } from './sounds.mjs';

const line = exampleLine();
const motion = recordingOf(
  [0, 1, 2].map((axis) =>
    Float64Array.from(hum(12, 400), (x, n) => x + 0.4 * Math.sin((2 * Math.PI * 31 * n) / 400 + axis)),
  ),
  400,
  'motion',
);
console.log('three axes, 4 800 samples each');
report('diagnose', 40, () => diagnose({ recording: motion, speed: 2 * Math.PI * 31, line }), 'wanted: 20 ms');
report('estimateSpeed', 40, () => estimateSpeed(motion, { range: [60, 400], line }));
report('trackOrders, speed followed', 10, () => trackOrders(motion, { orders: [1, 2, 4], line }));

for (const minutes of [1, 2, 5, 10]) {
  const samples = hum(60 * minutes, 48_000);
  const recording = recordingOf([samples], 48_000, 'sound');
  console.log(`sound, ${minutes} min at 48 kHz`);
  report('findPeaks', 3, () => findPeaks(samples, 48_000), minutes === 2 ? 'wanted: 300 ms' : '');
  report('estimateSpeed', 3, () => estimateSpeed(recording, { range: [600, 2000], line }));
  report('diagnose', 3, () => diagnose({ recording, speed: 2 * Math.PI * 200, line }));
  if (minutes <= 2)
    report('trackOrders, speed followed', 1, () =>
      trackOrders(recording, { orders: [1, 2], range: [600, 2000] }),
    );
}

function report(name, rounds, run, wanted = '') {
  let least = Infinity;
  for (let i = 0; i < rounds; i++) {
    const start = performance.now();
    run();
    least = Math.min(least, performance.now() - start);
  }
  console.log(`  ${name.padEnd(30)} ${least.toFixed(1).padStart(8)} ms ${wanted && `(${wanted})`}`);
}
