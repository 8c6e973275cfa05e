import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { AdviceAnswer, AdviceInput, AdviceWork, Asked } from '../model/advice-client.js';
import { CancelledError } from '../model/cancelled-error.js';
import { adviceClient } from './advice-worker.js';

/** ms that the user may go on typing before work starts. */
const PAUSE = 200;

/** Where a piece of work stands; the last answer stays while another is worked out. */
export interface TaskState<Answer> {
  readonly kind: 'idle' | 'working' | 'done' | 'cancelled' | 'failed';
  readonly answer?: Answer;
  readonly problem?: string;
}

/** What an answer hangs on: alike where every part is the same. */
export type TaskKey = readonly unknown[];

/** The last answer for each kind of work outlives the leaf that asked for it. */
const answers = new Map<AdviceWork, { readonly key: TaskKey; readonly answer: unknown }>();

/** A piece of advice that comes when it is worked out. */
export class AdviceTask<Work extends AdviceWork> implements ReactiveController {
  private state: TaskState<AdviceAnswer<Work>> = { kind: 'idle' };
  private key: TaskKey | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private asked: Asked<AdviceAnswer<Work>> | undefined;

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly work: Work,
  ) {
    host.addController(this);
  }

  hostDisconnected(): void {
    this.stop();
    this.key = undefined;
  }

  /**
   * Where the work on this input stands; asked for once it has rested.
   *
   * @param key - what the answer hangs on
   * @param input - made when it is needed
   */
  of(key: TaskKey, input: () => AdviceInput<Work>): TaskState<AdviceAnswer<Work>> {
    if (this.key && alike(this.key, key)) return this.state;
    const first = this.key === undefined;
    this.stop();
    this.key = key;
    const known = answers.get(this.work);
    if (known && alike(known.key, key)) {
      this.state = { kind: 'done', answer: known.answer as AdviceAnswer<Work> };
      return this.state;
    }
    this.state = { ...this.kept(), kind: 'working' };
    this.timer = setTimeout(() => void this.run(key, input()), first ? 0 : PAUSE);
    return this.state;
  }

  /** Stops the work on the input at hand. */
  readonly cancel = (): void => {
    this.stop();
    this.state = { ...this.kept(), kind: 'cancelled' };
    this.host.requestUpdate();
  };

  /** Works the input at hand out after all. */
  readonly again = (): void => {
    this.key = undefined;
    this.host.requestUpdate();
  };

  private kept(): Pick<TaskState<AdviceAnswer<Work>>, 'answer'> {
    const { answer } = this.state;
    return answer === undefined ? {} : { answer };
  }

  private stop(): void {
    clearTimeout(this.timer);
    this.asked?.cancel();
    this.asked = undefined;
  }

  private async run(key: TaskKey, input: AdviceInput<Work>): Promise<void> {
    const asked = adviceClient.ask(this.work, input);
    this.asked = asked;
    const state = await settled(asked);
    if (this.asked !== asked || state === undefined) return;
    this.asked = undefined;
    if (state.answer !== undefined) answers.set(this.work, { key, answer: state.answer });
    this.state = state;
    this.host.requestUpdate();
  }
}

async function settled<Answer>({ answer }: Asked<Answer>): Promise<TaskState<Answer> | undefined> {
  try {
    return { kind: 'done', answer: await answer };
  } catch (error) {
    if (error instanceof CancelledError) return undefined;
    return { kind: 'failed', problem: error instanceof Error ? error.message : String(error) };
  }
}

function alike(one: TaskKey, other: TaskKey): boolean {
  return one.length === other.length && one.every((part, index) => Object.is(part, other[index]));
}
