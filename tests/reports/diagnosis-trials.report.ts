import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import type { PlantedFile } from '../support/planted-trials.js';
import {
  calibration,
  falseAlarms,
  namedFirst,
  scoreSets,
  scoreSingles,
  type Rate,
  type Scored,
} from '../support/score-planted.js';

/* Writes docs/diagnosis-trials.md: `pnpm report:diagnosis`. Needs python3 with numpy and scipy. */
const SINGLES = 2500;
const SETS = 700;
/** Findings in a tenth of confidence below which chance alone moves its share by more than 0.03. */
const ENOUGH = 250;
const path = (place: string): string => fileURLToPath(new URL(`../../${place}`, import.meta.url));

it('writes the report', () => {
  const script = path('tests/reference/diagnosis/plant_faults.py');
  const counts = ['--single', String(SINGLES), '--sets', String(SETS)];
  const made = execFileSync('python3', [script, 'report', ...counts], {
    maxBuffer: 2 ** 30,
    encoding: 'utf8',
  });
  const file = JSON.parse(made) as PlantedFile;
  const text = report(scoreSingles(file), scoreSets(file));
  writeFileSync(path('docs/diagnosis-trials.md'), text);
  expect(readFileSync(path('docs/diagnosis-trials.md'), 'utf8')).toContain('named first');
});

function report(singles: readonly Scored[], sets: readonly Scored[]): string {
  const fair = singles.filter(({ visible, tellable }) => visible && tellable);
  const alike = singles.filter(({ visible, tellable }) => visible && !tellable);
  const seen = sets.filter(({ visible }) => visible);
  return `# Diagnoses of planted faults

Written by \`pnpm report:diagnosis\`; every figure is what that run gave. The recordings are made by
\`tests/reference/diagnosis/plant_faults.py\`, a simulation in the time domain that takes nothing from the library. Weights were fitted
on its \`tune\` seeds, the tests run on its \`test\` seeds, and this page comes from its \`report\` seeds; the three never meet.

What it is worth: the simulation and the library were written apart, but from the same knowledge of how such faults behave. That the
figures hold for simulated lines does not say that they hold for yours. On real recordings a confidence is a judgement.

## One recording

${singles.length} recordings, ${fair.length} of them with a fault whose line can be seen and told from its rivals in one recording (both by the
truth alone, as the head of the script says).

| planted | recordings | named first |
| --- | --- | --- |
${rows(fair)}
| **all** | **${fair.length}** | **${percent(namedFirst(fair))}** |

False alarms: ${falseAlarms(singles).hits} of ${falseAlarms(singles).of} recordings of noise alone gave any finding (${percent(falseAlarms(singles))}).

${alike.length} more show a fault that one recording cannot tell from another: a bow whose axial motion is not known, two blades and a joint
that both push twice a turn, shafts out of line on a line that is not described, a line whose bushes hold firmer than it says. Named
first ${percent(namedFirst(alike))}; named first or among the rivals of the first ${percent(amongRivals(alike))}. Several trials tell them apart.

### Confidence

Every finding of every recording, also of those that cannot be told.

${bins(singles)}

## Several trials of one line

${sets.length} lines, each run at three speeds, without the propeller, and with the joint turned half a turn; ${seen.length} of them with a line that can be
seen at the highest speed.

| planted | lines | named first |
| --- | --- | --- |
${rows(seen)}
| **all** | **${seen.length}** | **${percent(namedFirst(seen))}** |

### Confidence

${bins(sets)}

## What is not in it

Torsional resonance, switching of controllers and orders of motor poles are not among the planted faults; their confidences are judged.
A hump of one order over a resonance of the hull is read by \`diagnoseTrials\`, but not planted here.
`;
}

function rows(scored: readonly Scored[]): string {
  const causes = [...new Set(scored.map(({ planted }) => planted[0]!))].sort();
  return causes
    .map((cause) => {
      const own = scored.filter(({ planted }) => planted[0] === cause);
      return `| ${cause} | ${own.length} | ${percent(namedFirst(own))} |`;
    })
    .join('\n');
}

function bins(scored: readonly Scored[]): string {
  const all = calibration(scored);
  const lines = all.map(({ from, count, said, was }) => {
    const scatter = Math.sqrt((said * (1 - said)) / count);
    const figures = [said, was, was - said, scatter].map((x) => x.toFixed(3)).join(' | ');
    return `| ${from.toFixed(1)} to ${(from + 0.1).toFixed(1)} | ${count} | ${figures} |`;
  });
  const total = all.reduce((sum, { count }) => sum + count, 0);
  const mean = all.reduce((sum, { count, said, was }) => sum + count * Math.abs(was - said), 0) / total;
  const fair = all.filter(({ count }) => count >= ENOUGH);
  const worst = Math.max(...fair.map(({ said, was }) => Math.abs(was - said)));
  return `| confidence | findings | mean said | share planted | apart | one standard error by chance |
| --- | --- | --- | --- | --- | --- |
${lines.join('\n')}

Mean distance, weighted by findings: ${mean.toFixed(3)}. Largest where ${ENOUGH} findings or more stand: ${worst.toFixed(3)}.`;
}

function amongRivals(scored: readonly Scored[]): Rate {
  const hits = scored.filter(({ planted, findings: [first] }) =>
    [first?.cause, ...(first?.rivals.map(({ cause }) => cause) ?? [])].some(
      (cause) => cause !== undefined && planted.includes(cause),
    ),
  );
  return { hits: hits.length, of: scored.length };
}

function percent({ hits, of }: Rate): string {
  return of === 0 ? 'none' : `${((100 * hits) / of).toFixed(1)} %`;
}
