/*
 * The studies of one line against the clock: see README.md here.
 */
import { exampleLine, proposeRemedies, toleranceStudy } from '../packages/core/dist/index.js';

const line = exampleLine();
const speed = (3300 * Math.PI) / 30;

const seconds = (run) => {
  const start = performance.now();
  run();
  return (performance.now() - start) / 1000;
};

const tolerances = {
  'shafts[1].outerDiameter': 0.00002,
  'shafts[1].supports[0].at': 0.001,
  'shafts[1].supports[1].at': 0.001,
  'shafts[1].discs[0].at': 0.001,
  'shafts[1].discs[0].mass': 0.002,
  'shafts[1].elevation': 0.01,
};

seconds(() => toleranceStudy(line, { speed, tolerances, samples: 500 }));
const study = seconds(() => toleranceStudy(line, { speed, tolerances, samples: 10_000 }));
console.log(`toleranceStudy, 10 000 samples of six measures: ${study.toFixed(2)} s (wanted: under 5 s)`);

seconds(() => proposeRemedies(line, { speed }));
const remedies = Math.min(...[1, 2, 3].map(() => seconds(() => proposeRemedies(line, { speed }))));
console.log(`proposeRemedies: ${remedies.toFixed(2)} s (wanted: under 1 s)`);
