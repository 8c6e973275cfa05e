/** Every event below is fired on a user's action only, never because a property was set from code. */

const OUTWARD: EventInit = { bubbles: true, composed: true };

/** A field was given a new value; NaN where the text could not be read, undefined where it was emptied. */
export class ValueChangedEvent extends Event {
  static readonly type = 'value-changed';
  constructor(readonly value: number | undefined) {
    super(ValueChangedEvent.type, OUTWARD);
  }
}

/** A measure was given a new value, or another tolerance, both in the unit shown; undefined where it was emptied. */
export class MeasureChangedEvent extends Event {
  static readonly type = 'measure-changed';
  constructor(
    readonly value: number | undefined,
    readonly tolerance: number,
  ) {
    super(MeasureChangedEvent.type, OUTWARD);
  }
}

/** A text field was given a new text. */
export class TextChangedEvent extends Event {
  static readonly type = 'text-changed';
  constructor(readonly text: string) {
    super(TextChangedEvent.type, OUTWARD);
  }
}

/** One of several choices was taken. */
export class ChoiceChangedEvent extends Event {
  static readonly type = 'choice-changed';
  constructor(readonly choice: string) {
    super(ChoiceChangedEvent.type, OUTWARD);
  }
}

/** Trials were read and are to be kept. */
export class TrialsAddedEvent<Trial = unknown> extends Event {
  static readonly type = 'trials-added';
  constructor(readonly trials: readonly Trial[]) {
    super(TrialsAddedEvent.type, OUTWARD);
  }
}

/** What is known about a trial was changed: its name, its speed, its note. */
export class TrialChangedEvent<Trial = unknown> extends Event {
  static readonly type = 'trial-changed';
  constructor(readonly trial: Trial) {
    super(TrialChangedEvent.type, OUTWARD);
  }
}

/** A trial is to be dropped. */
export class TrialRemovedEvent extends Event {
  static readonly type = 'trial-removed';
  constructor(readonly id: string) {
    super(TrialRemovedEvent.type, OUTWARD);
  }
}

/** The level of one order in one trial. */
export interface OrderLevel {
  readonly trialId: string;
  /** rad/s, shaft speed of the trial. */
  readonly speed: number;
  readonly order: number;
  /** Peak amplitude in `unit`. */
  readonly amplitude: number;
  readonly unit: string;
  /** Whether it stands above the noise. */
  readonly seen: boolean;
}

/** An analysis that the user asked for has measured the orders of one trial. */
export class LevelsMeasuredEvent extends Event {
  static readonly type = 'levels-measured';
  constructor(readonly levels: readonly OrderLevel[]) {
    super(LevelsMeasuredEvent.type, OUTWARD);
  }
}

declare global {
  interface HTMLElementEventMap {
    'value-changed': ValueChangedEvent;
    'measure-changed': MeasureChangedEvent;
    'text-changed': TextChangedEvent;
    'choice-changed': ChoiceChangedEvent;
    'trials-added': TrialsAddedEvent;
    'trial-changed': TrialChangedEvent;
    'trial-removed': TrialRemovedEvent;
    'levels-measured': LevelsMeasuredEvent;
  }
}
