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

/** The project with a copy of a line, opened; what was measured in the hull holds for the copy too. */
export function withCopy(project: Project, original: ProjectLine): Project {
  const { line } = original;
  const id = freeId(
    'line',
    project.lines.map((entry) => entry.id),
  );
  const name = freeName(
    line.name,
    project.lines.map((entry) => entry.line.name),
  );
  return {
    ...project,
    lines: [...project.lines, { ...original, id, line: { ...line, name } }],
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
  const stem = name.replace(/ \((copy|copy \d+)\)$/, '');
  for (let number = 1; ; number++) {
    const candidate = number === 1 ? `${stem} (copy)` : `${stem} (copy ${number})`;
    if (!taken.includes(candidate)) return candidate;
  }
}
