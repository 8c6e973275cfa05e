import { describe, expect, it } from 'vitest';
import {
  checkProject,
  ProjectFileError,
  readProjectFile,
  writeProjectFile,
} from '../../../packages/demo/src/model/project-file.js';
import { sampleProject } from '../../../packages/demo/src/model/sample-project.js';

const project = sampleProject();
const plain = JSON.parse(writeProjectFile(project)) as Record<string, unknown>;

function faultsOf(value: unknown): readonly string[] {
  try {
    readProjectFile(typeof value === 'string' ? value : JSON.stringify(value));
  } catch (error) {
    if (error instanceof ProjectFileError) return error.faults;
    throw error;
  }
  return [];
}

describe('a project file', () => {
  it('brings the project back, samples to the seven digits of a 32-bit float', () => {
    const back = readProjectFile(writeProjectFile(project));
    expect({ ...back, trials: [] }).toEqual({ ...project, trials: [] });
    back.trials.forEach((trial, index) => {
      const original = project.trials[index]!;
      expect({ ...trial, recording: undefined }).toEqual({ ...original, recording: undefined });
      expect(trial.recording.sampleRate).toBe(original.recording.sampleRate);
      expect(trial.recording.sampling).toEqual(original.recording.sampling);
      trial.recording.channels.forEach((channel, place) => {
        const samples = original.recording.channels[place]!.samples;
        expect(channel.samples).toEqual(Float64Array.from(samples, (sample) => Math.fround(sample)));
      });
    });
  });

  it('keeps samples as they are where they never were text', () => {
    expect(checkProject(project).trials[0]?.recording.channels[0]?.samples).toBe(
      project.trials[0]?.recording.channels[0]?.samples,
    );
  });

  it('opens its first line where the one named is not there', () => {
    expect(readProjectFile(JSON.stringify({ ...plain, openLine: 'gone' })).openLine).toBe(
      project.lines[0]?.id,
    );
  });
});

describe('a file that is no project', () => {
  it.each([
    ['no JSON', 'hello', /^This is not a project file: its text is not JSON/],
    ['other JSON', { a: 1 }, /^This file is JSON, but not a project saved by this page\.$/],
    ['a list', [], /^This file is JSON, but not a project saved by this page\.$/],
    ['a later version', { ...plain, version: 2 }, /^The file is of version 2; this page reads version 1\.$/],
    ['no line', { ...plain, lines: [] }, /^The project holds no shaft line\.$/],
    ['no speed', { ...plain, wantedSpeed: 'fast' }, /^The wanted speed is not a number greater than 0\.$/],
    ['trials of another kind', { ...plain, trials: 7 }, /^The trials are not a list\.$/],
    [
      'a trial without samples',
      { ...plain, trials: [{ recording: { sampleRate: 100 } }] },
      /^Trial 1: its samples cannot be read\.$/,
    ],
    [
      'a trial without a rate',
      { ...plain, trials: [{ recording: {} }] },
      /^Trial 1: its sampling rate is not a number/,
    ],
    ['a trial without a recording', { ...plain, trials: [{}] }, /^Trial 1: it has no recording\.$/],
  ])('is refused: %s', (_, value, words) => {
    const faults = faultsOf(value);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(words);
  });

  it('is refused with all its faults at once', () => {
    const faults = faultsOf({
      ...plain,
      wantedSpeed: -1,
      lines: [{ id: 'a', line: { shafts: [] } }],
      trials: [{}],
    });
    expect(faults).toHaveLength(3);
    expect(faults[0]).toMatch(/^Shaft line 1: parseShaftLine: shafts must be a list of one or more shafts/);
  });

  it('keeps the stretch that is read and what the device granted; a stretch outside the recording is let go', () => {
    const [trial] = project.trials;
    const told = { ...trial!, part: { from: 1, to: 3 }, granted: ['All off.'] };
    const [back] = readProjectFile(writeProjectFile({ ...project, trials: [told] })).trials;
    expect(back).toMatchObject({ part: { from: 1, to: 3 }, granted: ['All off.'] });
    const beyond = { ...told, part: { from: 1, to: 3000 } };
    const [mended] = readProjectFile(writeProjectFile({ ...project, trials: [beyond] })).trials;
    expect(mended?.part).toBeUndefined();
  });
});
