const OUTWARD: EventInit = { bubbles: true, composed: true };

/** The user chose a part of the line. */
export class PartChosenEvent extends Event {
  static readonly type = 'part-choose';
  constructor(readonly part: string) {
    super(PartChosenEvent.type, OUTWARD);
  }
}

/** The user moved the wanted speed on the ruler; in the ruler's unit. `settled` once the hand lets go. */
export class SpeedMovedEvent extends Event {
  static readonly type = 'speed-move';
  constructor(
    readonly speed: number,
    readonly phase: 'moving' | 'settled',
  ) {
    super(SpeedMovedEvent.type, OUTWARD);
  }
}

/** The user chose a mode. */
export class ModeChosenEvent extends Event {
  static readonly type = 'mode-choose';
  constructor(readonly mode: number) {
    super(ModeChosenEvent.type, OUTWARD);
  }
}

/** The user reads the turn out at this angle of the motor shaft, in rad. */
export class TurnReadEvent extends Event {
  static readonly type = 'turn-read';
  constructor(readonly angle: number) {
    super(TurnReadEvent.type, OUTWARD);
  }
}

declare global {
  interface HTMLElementEventMap {
    'part-choose': PartChosenEvent;
    'speed-move': SpeedMovedEvent;
    'mode-choose': ModeChosenEvent;
    'turn-read': TurnReadEvent;
  }
}
