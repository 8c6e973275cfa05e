import { describe, expect, it } from 'vitest';
import type { LineAdvice } from '../../../packages/demo/src/model/advice.js';
import { SHED_TOLERANCES } from '../../../packages/demo/src/model/layout-tolerances.js';
import { withAdded, withAdvice, withCopy } from '../../../packages/demo/src/model/project-edits.js';
import { readProjectFile, writeProjectFile } from '../../../packages/demo/src/model/project-file.js';
import { readAdvice, readTolerances } from '../../../packages/demo/src/model/read-advice.js';
import { sampleProject } from '../../../packages/demo/src/model/sample-project.js';

const project = { ...sampleProject(), trials: [] };
const [first] = project.lines;

const advice: LineAdvice = {
  balance: {
    speed: 190,
    mass: 0.0002,
    angles: [0, 1.5, 3],
    runs: { found: { amplitude: 0.31, error: 0.01, trialId: 'a' }, check: { amplitude: 0 } },
    channel: 'x',
    unit: 'm/s²',
    by: 'removing',
  },
  calibration: {
    resonances: [
      { frequency: 88, error: 1, medium: 'air' },
      { speed: 540, order: 2, medium: 'water' },
    ],
  },
};

describe('advice in a project file', () => {
  it('comes back as it was', () => {
    const kept = withAdvice(project, first!.id, advice);
    expect(readProjectFile(writeProjectFile(kept)).lines[0]?.advice).toEqual(advice);
  });

  it('is none in files from before there was any', () => {
    const back = readProjectFile(writeProjectFile(project));
    expect(back.lines[0]).not.toHaveProperty('advice');
    expect(back).not.toHaveProperty('tolerances');
  });

  it('drops what cannot be read and keeps the rest', () => {
    const read = readAdvice({
      balance: { mass: 'much', radius: 0.01, angles: [0, 1], runs: { found: { amplitude: -1 } } },
      calibration: { resonances: [{ frequency: 'high' }, { frequency: 70 }, 4] },
    });
    expect(read?.balance).toMatchObject({ radius: 0.01, runs: {}, by: 'adding' });
    expect(read?.balance?.angles).toHaveLength(3);
    expect(read?.calibration?.resonances).toEqual([{ frequency: 70, medium: 'water' }]);
  });

  it('reads tolerances, 0 among them, and takes usual ones for the rest', () => {
    expect(readTolerances({ place: 0 })).toEqual({ ...SHED_TOLERANCES, place: 0 });
    expect(readTolerances(undefined)).toBeUndefined();
  });
});

describe('a line added beside its original', () => {
  it('keeps its own name, is opened, and takes what was measured but not what was found out', () => {
    const entry = { ...first!, advice };
    const added = withAdded(project, entry, { ...entry.line, name: 'As built' });
    const last = added.lines.at(-1);
    expect(last?.line.name).toBe('As built');
    expect(added.openLine).toBe(last?.id);
    expect(last?.measures).toBe(entry.measures);
    expect(last).not.toHaveProperty('advice');
  });

  it('is told apart from one of the same name', () => {
    expect(withCopy(project, first!).lines.at(-1)?.line.name).toBe(`${first!.line.name} (copy)`);
  });
});
