import { del, get, keys, set } from 'idb-keyval';
import type { Recording } from '@sternline/core';
import type { Project } from './project.js';
import { keepRecording, recallRecording } from './kept-recording.js';
import { checkProject } from './project-file.js';

const KEY = 'sternline-project';
const RECORDING = 'sternline-recording-';

/** Whether the browser kept the project. */
export type Kept = 'kept' | 'refused';

/** Recordings that stand in the browser's store already; they never change, so each is written once. */
const stored = new WeakMap<Recording, string>();

/** Keeps the project on this device. A private window or a full disk refuses; the page works on without it. */
export async function keepProject(project: Project): Promise<Kept> {
  try {
    for (const { id, recording } of project.trials) {
      if (stored.get(recording) === id) continue;
      await keepRecording(RECORDING + id, recording);
      stored.set(recording, id);
    }
    await set(KEY, { ...project, trials: project.trials.map((trial) => ({ ...trial, recording: null })) });
    await dropOthers(project);
    return 'kept';
  } catch {
    return 'refused';
  }
}

/** The project kept on this device, or undefined where there is none that can be read. */
export async function recallProject(): Promise<Project | undefined> {
  try {
    const project = await get<Project>(KEY);
    return project === undefined ? undefined : await completeProject(project);
  } catch {
    return undefined;
  }
}

// What cannot be read is put aside rather than written over: it may be of a later version of the page.
async function completeProject(project: Project): Promise<Project | undefined> {
  try {
    const trials = await Promise.all(
      project.trials.map(async (trial) => ({
        ...trial,
        recording: await recallRecording(RECORDING + trial.id),
      })),
    );
    const whole = checkProject({
      ...project,
      trials: trials.filter(({ recording }) => recording !== undefined),
    });
    for (const { id, recording } of whole.trials) stored.set(recording, id);
    return whole;
  } catch {
    await set(`${KEY}-unreadable`, project);
    return undefined;
  }
}

async function dropOthers({ trials }: Project): Promise<void> {
  const wanted = new Set(trials.map(({ id }) => RECORDING + id));
  const isWanted = (key: string) => wanted.has(key.split(' ')[0] ?? '');
  for (const key of await keys()) {
    if (typeof key === 'string' && key.startsWith(RECORDING) && !isWanted(key)) await del(key);
  }
}
