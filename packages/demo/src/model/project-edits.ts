import type { ShaftLine } from '@sternline/core';
import type { LineAdvice } from './advice.js';
import type { LineMeasures } from './measures.js';
import type { Project, ProjectLine, Trial } from './project.js';

/** The line that is being worked on. */
export function openLineOf(project: Project): ProjectLine | undefined {
  return project.lines.find((entry) => entry.id === project.openLine) ?? project.lines[0];
}

/** The project with another shape of one of its lines. */
export function withLine(project: Project, { id, line }: Pick<ProjectLine, 'id' | 'line'>): Project {
  return changeEntry(project, id, (entry) => ({ ...entry, line }));
}

/** The project with what was measured for one of its lines. */
export function withMeasures(project: Project, id: string, measures: LineMeasures): Project {
  return changeEntry(project, id, (entry) => ({ ...entry, measures }));
}

/** The project with what is being found out about one of its lines. */
export function withAdvice(project: Project, id: string, advice: LineAdvice): Project {
  return changeEntry(project, id, (entry) => ({ ...entry, advice }));
}

/** The project with a copy of a line, opened; what was measured in the hull holds for the copy too. */
export function withCopy(project: Project, original: ProjectLine): Project {
  return withAdded(project, original, original.line);
}

/** The project with a changed line beside its original, opened; what was found out about the original stays with that. */
export function withAdded(project: Project, original: ProjectLine, line: ShaftLine): Project {
  const id = freeId(
    'line',
    project.lines.map((entry) => entry.id),
  );
  const { measures } = original;
  const name = freeName(
    line.name,
    project.lines.map((entry) => entry.line.name),
  );
  return {
    ...project,
    lines: [...project.lines, { ...(measures ? { measures } : {}), id, line: { ...line, name } }],
    openLine: id,
  };
}

/** The project without one of its lines; the last one stays. */
export function withoutLine(project: Project, id: string): Project {
  const lines = project.lines.filter((entry) => entry.id !== id);
  const [first] = lines;
  if (!first) return project;
  return { ...project, lines, openLine: project.openLine === id ? first.id : project.openLine };
}

/** The project with trials put in; one that is there already is replaced. */
export function withTrials(project: Project, trials: readonly Trial[]): Project {
  const changed = new Map(trials.map((trial) => [trial.id, trial]));
  const kept = project.trials.map((trial) => changed.get(trial.id) ?? trial);
  const known = new Set(project.trials.map((trial) => trial.id));
  return { ...project, trials: [...kept, ...trials.filter((trial) => !known.has(trial.id))] };
}

/** The project without one of its trials. */
export function withoutTrial(project: Project, id: string): Project {
  return { ...project, trials: project.trials.filter((trial) => trial.id !== id) };
}

function changeEntry(project: Project, id: string, change: (entry: ProjectLine) => ProjectLine): Project {
  return { ...project, lines: project.lines.map((entry) => (entry.id === id ? change(entry) : entry)) };
}

function freeId(stem: string, taken: readonly string[]): string {
  for (let number = taken.length + 1; ; number++) {
    const id = `${stem}-${number}`;
    if (!taken.includes(id)) return id;
  }
}

function freeName(name: string, taken: readonly string[]): string {
  if (!taken.includes(name)) return name;
  const stem = name.replace(/ \((copy|copy \d+)\)$/, '');
  for (let number = 1; ; number++) {
    const candidate = number === 1 ? `${stem} (copy)` : `${stem} (copy ${number})`;
    if (!taken.includes(candidate)) return candidate;
  }
}
