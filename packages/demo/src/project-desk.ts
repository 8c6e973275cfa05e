import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { LineFault, ShaftLine } from '@sternline/core';
import { checkLine } from './model/judge-line.js';
import { pushState, redo, replaceState, startHistory, undo, type History } from './model/history.js';
import type { Project, ProjectLine } from './model/project.js';
import { openLineOf, withLine } from './model/project-edits.js';
import { sampleProject } from './model/sample-project.js';
import { keepProject, recallProject } from './model/storage.js';

/** An edit that makes a line that cannot be; it waits here until it is mended or undone. */
export interface Draft {
  readonly id: string;
  readonly line: ShaftLine;
  readonly faults: readonly LineFault[];
}

/** ms of quiet before the project is kept on the device. */
const QUIET = 400;

/** ms that the device has to bring back a project; some browsers never answer in a private window. */
const PATIENCE = 2000;

function patience(): Promise<undefined> {
  return new Promise((resolve) => {
    setTimeout(() => {
      resolve(undefined);
    }, PATIENCE);
  });
}

/** The project that `app-root` owns: its history, the edit in hand, and its copy on the device. */
export class ProjectDesk implements ReactiveController {
  draft: Draft | undefined;
  /** Whether the device keeps the project. */
  kept: 'kept' | 'refused' | 'not yet' = 'not yet';
  private history: History<Project> | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly host: ReactiveControllerHost) {
    host.addController(this);
  }

  hostConnected(): void {
    window.addEventListener('keydown', this.onKeydown);
    void this.start();
  }

  hostDisconnected(): void {
    window.removeEventListener('keydown', this.onKeydown);
    clearTimeout(this.timer);
  }

  get project(): Project | undefined {
    return this.history?.present;
  }

  get canUndo(): boolean {
    return this.draft !== undefined || (this.history?.past.length ?? 0) > 0;
  }

  get canRedo(): boolean {
    return (this.history?.future.length ?? 0) > 0;
  }

  /** A new state of the project, as a step that can be undone. */
  change(next: Project): void {
    if (this.history) this.take(pushState(this.history, next));
  }

  /** A new state that is not worth a step: another line opened, other units. */
  adjust(next: Project): void {
    if (this.history) this.take(replaceState(this.history, next));
  }

  /** A new shape of the open line: a step if it can be, else a draft. */
  editLine(line: ShaftLine): void {
    const { project } = this;
    const open = project ? openLineOf(project) : undefined;
    if (!project || !open) return;
    const checked = checkLine(line);
    if (checked.line) {
      this.draft = undefined;
      this.change(withLine(project, { id: open.id, line: checked.line }));
    } else {
      this.draft = { id: open.id, line, faults: checked.faults };
      this.host.requestUpdate();
    }
  }

  /** The open line as entered, faults and all. */
  entered({ id, line }: ProjectLine): ShaftLine {
    return this.draft?.id === id ? this.draft.line : line;
  }

  undo(): void {
    if (this.draft) {
      this.draft = undefined;
      this.host.requestUpdate();
    } else if (this.history) {
      this.take(this.inUnits(undo(this.history)));
    }
  }

  redo(): void {
    this.draft = undefined;
    if (this.history) this.take(this.inUnits(redo(this.history)));
  }

  // Stepping through edits leaves the reader's units as they are.
  private inUnits(history: History<Project>): History<Project> {
    const units = this.project?.units ?? history.present.units;
    return units === history.present.units ? history : replaceState(history, { ...history.present, units });
  }

  private readonly onKeydown = (event: KeyboardEvent): void => {
    const [target] = event.composedPath();
    const command = event.ctrlKey || event.metaKey;
    if (!command || event.altKey || target instanceof HTMLInputElement) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    if (key === 'y' || event.shiftKey) this.redo();
    else this.undo();
  };

  private async start(): Promise<void> {
    const project = (await Promise.race([recallProject(), patience()])) ?? sampleProject();
    this.history = startHistory(project);
    this.host.requestUpdate();
  }

  private take(history: History<Project>): void {
    this.history = history;
    if (this.draft && this.draft.id !== history.present.openLine) this.draft = undefined;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.keep(), QUIET);
    this.host.requestUpdate();
  }

  private async keep(): Promise<void> {
    if (!this.project) return;
    this.kept = await keepProject(this.project);
    this.host.requestUpdate();
  }
}
