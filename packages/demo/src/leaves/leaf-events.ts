import type { ShaftLine } from '@sternline/core';
import type { LineMeasures } from '../model/measures.js';
import type { Units } from '../model/project.js';

const OUTWARD: EventInit = { bubbles: true, composed: true };

/** The user changed the line; it may be one that cannot be. */
export class LineEditedEvent extends Event {
  static readonly type = 'line-edited';
  constructor(readonly line: ShaftLine) {
    super(LineEditedEvent.type, OUTWARD);
  }
}

/** The user measured something for the open line, or settled something beside its shape. */
export class MeasuresChangedEvent extends Event {
  static readonly type = 'measures-changed';
  constructor(readonly measures: LineMeasures) {
    super(MeasuresChangedEvent.type, OUTWARD);
  }
}

/** The user wants a copy of a line, opened. */
export class LineCopiedEvent extends Event {
  static readonly type = 'line-copied';
  constructor(readonly id: string) {
    super(LineCopiedEvent.type, OUTWARD);
  }
}

/** The user wants to work on another line. */
export class LineOpenedEvent extends Event {
  static readonly type = 'line-opened';
  constructor(readonly id: string) {
    super(LineOpenedEvent.type, OUTWARD);
  }
}

/** The user wants a line gone. */
export class LineRemovedEvent extends Event {
  static readonly type = 'line-removed';
  constructor(readonly id: string) {
    super(LineRemovedEvent.type, OUTWARD);
  }
}

/** What the user wants done with the project as a whole. */
export type ProjectCommand = 'undo' | 'redo' | 'save' | 'open' | 'sample';

/** The user wants something done with the project as a whole. */
export class ProjectCommandEvent extends Event {
  static readonly type = 'project-command';
  constructor(readonly command: ProjectCommand) {
    super(ProjectCommandEvent.type, OUTWARD);
  }
}

/** The user renamed the project or chose other units. */
export class ProjectSettingsEvent extends Event {
  static readonly type = 'project-settings';
  constructor(readonly settings: { readonly name?: string; readonly units?: Units }) {
    super(ProjectSettingsEvent.type, OUTWARD);
  }
}

/** The user set the wanted speed; `moving` while a hand still drags it. */
export class WantedSpeedEvent extends Event {
  static readonly type = 'wanted-speed';
  constructor(
    /** rad/s */
    readonly speed: number,
    readonly phase: 'moving' | 'settled',
  ) {
    super(WantedSpeedEvent.type, OUTWARD);
  }
}

declare global {
  interface HTMLElementEventMap {
    'line-edited': LineEditedEvent;
    'measures-changed': MeasuresChangedEvent;
    'line-copied': LineCopiedEvent;
    'line-opened': LineOpenedEvent;
    'line-removed': LineRemovedEvent;
    'project-command': ProjectCommandEvent;
    'project-settings': ProjectSettingsEvent;
    'wanted-speed': WantedSpeedEvent;
  }
}
