import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { PlantedFile } from '../support/planted-trials.js';
import { calibration, namedFirst, scoreSets } from '../support/score-planted.js';

/* How several trials of one line do on planted faults of the kind `tune`, cause by cause, for mending the method. */
it.runIf(process.env['TUNE'])('scores the sets', () => {
  const scored = scoreSets(JSON.parse(readFileSync(process.env['TUNE'] ?? '', 'utf8')) as PlantedFile);
  const visible = scored.filter((one) => one.visible);
  writeFileSync(`${process.env['TUNE'] ?? ''}.sets.json`, JSON.stringify(scored));
  console.log(namedFirst(visible), calibration(scored));
  for (const cause of new Set(visible.map(({ planted }) => planted[0]!))) {
    const own = visible.filter(({ planted }) => planted[0] === cause);
    const missed = own.filter(({ findings }) => findings[0]?.cause !== cause);
    console.log(cause, namedFirst(own), missed.map(({ findings }) => findings[0]?.cause ?? 'none').join(' '));
  }
  expect(scored.length).toBeGreaterThan(0);
});
