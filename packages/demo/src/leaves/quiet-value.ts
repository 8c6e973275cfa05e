import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** ms of quiet before a costly figure is worked out again. */
const QUIET = 150;

/** A figure that takes long enough to be felt: worked out once its inputs rest, the last one standing meanwhile. */
export class QuietValue<Inputs extends readonly unknown[], Value> implements ReactiveController {
  /** Whether the value is that of earlier inputs. */
  waiting = false;
  private inputs: Inputs | undefined;
  private value: Value | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly work: (...inputs: Inputs) => Value,
  ) {
    host.addController(this);
  }

  hostDisconnected(): void {
    clearTimeout(this.timer);
    this.inputs = undefined;
  }

  /** The value for these inputs, or the last one while they have only just come. */
  of(...inputs: Inputs): Value | undefined {
    const { inputs: before } = this;
    if (before?.every((input, index) => Object.is(input, inputs[index])) === true) return this.value;
    this.inputs = inputs;
    this.waiting = true;
    clearTimeout(this.timer);
    this.timer = setTimeout(
      () => {
        this.value = this.work(...inputs);
        this.waiting = false;
        this.host.requestUpdate();
      },
      this.value === undefined ? 0 : QUIET,
    );
    return this.value;
  }
}
