import { get, set } from 'idb-keyval';
import type { Project } from './project.js';
import { readProjectFile, writeProjectFile } from './project-file.js';

const KEY = 'sternline-project';

/** Whether the browser kept the project. */
export type Kept = 'kept' | 'refused';

/** Keeps the project on this device. A private window or a full disk refuses; the page works on without it. */
export async function keepProject(project: Project): Promise<Kept> {
  try {
    await set(KEY, writeProjectFile(project));
    return 'kept';
  } catch {
    return 'refused';
  }
}

/** The project kept on this device, or undefined where there is none that can be read. */
export async function recallProject(): Promise<Project | undefined> {
  try {
    const text = await get<string>(KEY);
    return text === undefined ? undefined : await readKept(text);
  } catch {
    return undefined;
  }
}

// What cannot be read is put aside rather than written over: it may be of a later version of the page.
async function readKept(text: string): Promise<Project | undefined> {
  try {
    return readProjectFile(text);
  } catch {
    await set(`${KEY}-unreadable`, text);
    return undefined;
  }
}
