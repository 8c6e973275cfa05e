import { describe, expect, it } from 'vitest';
import { readProjectFile, writeProjectFile } from '../../../packages/demo/src/model/project-file.js';
import { withCopy, withLine, withMeasures } from '../../../packages/demo/src/model/project-edits.js';
import { readMeasures } from '../../../packages/demo/src/model/read-measures.js';
import { sampleProject } from '../../../packages/demo/src/model/sample-project.js';

function read(value: unknown): { faults: string[]; measures: ReturnType<typeof readMeasures> } {
  const faults: string[] = [];
  return { measures: readMeasures(value, (fault) => faults.push(fault)), faults };
}

const WHOLE = {
  points: { 'motor-1-at': { value: 0.01, tolerance: 0.0005 }, 'tube-1-offset': { tolerance: 0.001 } },
  shims: { method: 'rim-and-face', values: { 'rim.top': 0, 'feet.rear': 0.09 } },
  drilling: { tubeDiameter: 0.008, bulkheads: [0.1, 0.2], hull: { at: 0.3, riseAft: 0.1 } },
  splineTeeth: 16,
  friction: 0.004,
};

describe('readMeasures', () => {
  it('brings everything back as it was', () => {
    expect(read(WHOLE)).toEqual({ measures: WHOLE, faults: [] });
    expect(read(JSON.parse(JSON.stringify(WHOLE)))).toEqual({ measures: WHOLE, faults: [] });
  });

  it('finds none in a file from before there were measures', () => {
    expect(read(undefined)).toEqual({ measures: undefined, faults: [] });
  });

  it('names every fault', () => {
    const { faults } = read({
      points: { 'motor-1-at': { value: 'near', tolerance: -1 } },
      shims: { method: 'by eye' },
      drilling: { bulkheads: [0.1, 'next'] },
      friction: Infinity,
    });
    expect(faults).toEqual([
      'the measure “value” is not a number.',
      'the tolerance of motor-1-at is not a number from 0 up.',
      'its readings for shims name no method that this page knows.',
      'the places of its bulkheads are not all numbers.',
      'the measure “friction” is not a number.',
    ]);
    expect(read([]).faults).toEqual(['its measures are no list of named values.']);
  });
});

describe('measures in a project', () => {
  const project = sampleProject();
  const [first] = project.lines;

  it('survive the file, an edit of the line, and a copy of it', () => {
    const back = readProjectFile(writeProjectFile(project));
    expect(back.lines[0]!.measures).toEqual(first!.measures);
    const edited = withLine(project, { id: first!.id, line: { ...first!.line, name: 'other' } });
    expect(edited.lines[0]!.measures).toBe(first!.measures);
    expect(withCopy(project, first!).lines.at(-1)!.measures).toBe(first!.measures);
  });

  it('change for one line alone', () => {
    const next = withMeasures(project, first!.id, { friction: 0.01 });
    expect(next.lines[0]!.measures).toEqual({ friction: 0.01 });
    expect(next.lines.slice(1)).toEqual(project.lines.slice(1));
  });
});
