import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { findCandidates } from '../../packages/core/src/diagnosis/find-candidates.js';
import { gatherEvidence } from '../../packages/core/src/diagnosis/gather-evidence.js';
import { measureTraits } from '../../packages/core/src/diagnosis/measure-traits.js';
import { plantedLines, unpackRecording, type PlantedFile } from '../support/planted-trials.js';

/*
 * The first step of fitting the weights of causes; the second is tests/reference/diagnosis/fit_weights.py.
 *   python3 tests/reference/diagnosis/plant_faults.py tune --single 4000 --sets 600 > tune.json
 *   TUNE=tune.json vitest run --config tests/reports/vitest.config.ts traits
 *   python3 tests/reference/diagnosis/fit_weights.py tune.json.traits.json
 */
it.runIf(process.env['TUNE'])('writes the traits and candidates of every planted recording', () => {
  const path = process.env['TUNE'] ?? '';
  const file = JSON.parse(readFileSync(path, 'utf8')) as PlantedFile;
  const lines = plantedLines(file);
  const rows = file.single.map(({ planted, visible, tellable, line, speed, rate, axial, channels }) => {
    const evidence = gatherEvidence({
      recording: unpackRecording(channels, rate),
      speed,
      ...(line === null ? {} : { line: lines[line]! }),
      ...(axial === null ? {} : { axial }),
    });
    const candidates = findCandidates(evidence)
      .filter(({ judged }) => judged === undefined)
      .map(({ cause, adjustment = 0 }) => ({ cause, adjustment }));
    return { planted, visible, tellable, candidates, traits: measureTraits(evidence) };
  });
  writeFileSync(`${path}.traits.json`, JSON.stringify(rows));
  expect(rows.length).toBe(file.single.length);
});
