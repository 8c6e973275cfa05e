import { saveFile } from './charts/save-file.js';
import type { Project } from './model/project.js';
import { readProjectFile, writeProjectFile } from './model/project-file.js';

/** Hands the project to the browser as a file to save, named after it. */
export function saveProject(project: Project): void {
  const stem = project.name
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .toLowerCase();
  const name = `${stem || 'project'}.sternline.json`;
  saveFile(name, { text: writeProjectFile(project), type: 'application/json' });
}

/** Lets the user choose a project file. */
export function chooseProjectFile(take: (file: File) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,application/json';
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (file) take(file);
  });
  input.click();
}

/**
 * Reads a project file that the user chose or dropped.
 *
 * @returns the project, if the file is one, and what to tell the user
 */
export async function openProjectFile(
  file: File,
): Promise<{ readonly project?: Project; readonly notice: string }> {
  try {
    const project = readProjectFile(await file.text());
    return { project, notice: `“${file.name}” is open. Undo brings back what was there before.` };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { notice: `“${file.name}” was not opened. ${why}` };
  }
}

/** Whether a file is a project saved by this page, by its first lines; other JSON may be a recording. */
export async function isProjectFile(file: File): Promise<boolean> {
  return /\.json$/i.test(file.name) && (await file.slice(0, 400).text()).includes('"sternline-project"');
}
