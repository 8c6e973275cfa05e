import type { ShaftLine } from '@sternline/core';
import type { LineAdvice } from '../model/advice.js';
import type { LayoutTolerances } from '../model/layout-tolerances.js';

const OUTWARD: EventInit = { bubbles: true, composed: true };

/** The user entered something that is to be found out about the open line. */
export class AdviceChangedEvent extends Event {
  static readonly type = 'advice-changed';
  constructor(readonly advice: LineAdvice) {
    super(AdviceChangedEvent.type, OUTWARD);
  }
}

/** The user wants a changed line kept as a layout of its own, and opened. */
export class LineAddedEvent extends Event {
  static readonly type = 'line-added';
  constructor(readonly line: ShaftLine) {
    super(LineAddedEvent.type, OUTWARD);
  }
}

/** The user said how far the measures of the layouts may be off. */
export class TolerancesChangedEvent extends Event {
  static readonly type = 'tolerances-changed';
  constructor(readonly tolerances: LayoutTolerances) {
    super(TolerancesChangedEvent.type, OUTWARD);
  }
}

declare global {
  interface HTMLElementEventMap {
    'advice-changed': AdviceChangedEvent;
    'line-added': LineAddedEvent;
    'tolerances-changed': TolerancesChangedEvent;
  }
}
