import { parseShaftLine, ShaftLineError } from '@sternline/core';
import type { Project, ProjectLine, Trial } from './project.js';
import { asFields, asText, isPositive, type Fields } from './plain-data.js';
import { readAdvice, readTolerances } from './read-advice.js';
import { readMeasures } from './read-measures.js';
import type { RecordingPart } from './recording-part.js';
import { readRecording } from './read-recording.js';
import { samplesToText } from './samples-text.js';

/** A project file that cannot be read; says everything that is wrong with it. */
export class ProjectFileError extends Error {
  constructor(readonly faults: readonly string[]) {
    super(faults.join(' '));
    this.name = 'ProjectFileError';
  }
}

/** The text of a project file. */
export function writeProjectFile(project: Project): string {
  return JSON.stringify(
    project,
    (_key, value: unknown) => (value instanceof Float64Array ? samplesToText(value) : value),
    1,
  );
}

/**
 * Reads a project file and checks all of it.
 *
 * @param text - the content of the file
 * @returns the project
 * @throws ProjectFileError with every fault, each in one sentence
 */
export function readProjectFile(text: string): Project {
  return checkProject(parseJson(text));
}

/**
 * Checks plain data that should be a project; samples may be text or numbers.
 *
 * @param value - anything
 * @returns the project
 * @throws ProjectFileError with every fault, each in one sentence
 */
export function checkProject(value: unknown): Project {
  const data = asProject(value);
  const faults: string[] = [];
  const lines = readLines(data['lines'], faults);
  const trials = readTrials(data['trials'], faults);
  const wantedSpeed = data['wantedSpeed'];
  if (!isPositive(wantedSpeed)) faults.push('The wanted speed is not a number greater than 0.');
  if (faults.length > 0 || !isPositive(wantedSpeed)) throw new ProjectFileError(faults);
  const open = asText(data['openLine']);
  const tolerances = readTolerances(data['tolerances']);
  return {
    format: 'sternline-project',
    version: 1,
    name: asText(data['name']) || 'Unnamed project',
    note: asText(data['note']),
    units: data['units'] === 'inch' ? 'inch' : 'metric',
    wantedSpeed,
    ...(tolerances ? { tolerances } : {}),
    lines,
    openLine: lines.some((line) => line.id === open) ? open : (lines[0]?.id ?? ''),
    trials,
  };
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new ProjectFileError([`This is not a project file: its text is not JSON (${why}).`]);
  }
}

function asProject(value: unknown): Fields {
  const fields = asFields(value);
  if (fields?.['format'] !== 'sternline-project') {
    throw new ProjectFileError(['This file is JSON, but not a project saved by this page.']);
  }
  if (fields['version'] !== 1) {
    throw new ProjectFileError([
      `The file is of version ${JSON.stringify(fields['version'])}; this page reads version 1.`,
    ]);
  }
  return fields;
}

function readLines(value: unknown, faults: string[]): ProjectLine[] {
  if (!Array.isArray(value) || value.length === 0) {
    faults.push('The project holds no shaft line.');
    return [];
  }
  const lines = value.flatMap((entry: unknown, index) => readLine(asFields(entry), { index, faults }));
  const ids = new Set(lines.map((line) => line.id));
  if (ids.size < lines.length) faults.push('Two shaft lines have the same id.');
  return lines;
}

interface Place {
  readonly index: number;
  readonly faults: string[];
}

function readLine(entry: Fields | undefined, { index, faults }: Place): ProjectLine[] {
  try {
    const line = parseShaftLine(entry?.['line']);
    const measures = readMeasures(entry?.['measures'], (fault) => {
      faults.push(`Shaft line ${index + 1}: ${fault}`);
    });
    const advice = readAdvice(entry?.['advice']);
    const id = asText(entry?.['id']) || `line-${index + 1}`;
    return [{ id, line, ...(measures ? { measures } : {}), ...(advice ? { advice } : {}) }];
  } catch (error) {
    if (!(error instanceof ShaftLineError)) throw error;
    faults.push(`Shaft line ${index + 1}: ${error.message}`);
    return [];
  }
}

function readTrials(value: unknown, faults: string[]): Trial[] {
  if (value === undefined) return [];
  if (!Array.isArray(value)) {
    faults.push('The trials are not a list.');
    return [];
  }
  return value.flatMap((entry: unknown, index) => readTrial(asFields(entry), { index, faults }));
}

function readTrial(entry: Fields | undefined, { index, faults }: Place): Trial[] {
  const recording = readRecording(entry?.['recording']);
  if (!entry || typeof recording === 'string') {
    faults.push(`Trial ${index + 1}: ${typeof recording === 'string' ? recording : 'it is empty.'}`);
    return [];
  }
  const speed = entry['speed'];
  const granted: unknown = entry['granted'];
  const part = readPart(asFields(entry['part']), recording.sampling.duration);
  return [
    {
      id: asText(entry['id']) || `trial-${index + 1}`,
      name: asText(entry['name']) || recording.name,
      lineId: asText(entry['lineId']),
      ...(isPositive(speed) ? { speed } : {}),
      note: asText(entry['note']),
      simulated: entry['simulated'] === true,
      ...(Array.isArray(granted) ? { granted: granted.map(asText).filter(Boolean) } : {}),
      ...(part ? { part } : {}),
      recording,
    },
  ];
}

/** A stretch that does not lie in the recording is no loss: the whole is read. */
function readPart(fields: Fields | undefined, duration: number): RecordingPart | undefined {
  const [from, to] = [fields?.['from'], fields?.['to']];
  if (typeof from !== 'number' || typeof to !== 'number') return undefined;
  return from >= 0 && to > from && to <= duration * 1.001 ? { from, to } : undefined;
}
