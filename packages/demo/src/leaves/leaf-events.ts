import type { ShaftLine } from '@sternline/core';

const OUTWARD: EventInit = { bubbles: true, composed: true };

/** The user changed the line; it may be one that cannot be. */
export class LineEditedEvent extends Event {
  static readonly type = 'line-edited';
  constructor(readonly line: ShaftLine) {
    super(LineEditedEvent.type, OUTWARD);
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

declare global {
  interface HTMLElementEventMap {
    'line-edited': LineEditedEvent;
    'line-copied': LineCopiedEvent;
    'line-opened': LineOpenedEvent;
    'line-removed': LineRemovedEvent;
  }
}
