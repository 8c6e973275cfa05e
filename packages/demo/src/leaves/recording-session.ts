import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { captureMotion } from '../model/capture-motion.js';
import { captureSound } from '../model/capture-sound.js';
import { CaptureError } from '../model/capture-types.js';
import type { Capture } from '../model/capture-types.js';

/** What is recorded. */
export type CaptureKind = 'sound' | 'motion';

/** A device that is at hand, and what it granted. */
export interface GrantedCapture {
  readonly kind: CaptureKind;
  readonly capture: Capture;
  readonly granted: readonly string[];
}

/** A recording that the page made. */
export interface MadeRecording {
  readonly file: File;
  readonly granted: readonly string[];
}

/** Where a recording stands. */
export type SessionState =
  | { readonly kind: 'idle'; readonly problems: readonly string[] }
  | { readonly kind: 'asking' }
  | { readonly kind: 'counting'; readonly left: number }
  | { readonly kind: 'recording'; readonly elapsed: number }
  | { readonly kind: 'finishing' };

/** What the session needs of the page. */
export interface SessionHost {
  /** What a rate shows of the orders in question, in sentences. */
  readonly reach: (sampleRate: number) => readonly string[];
  readonly done: (made: readonly MadeRecording[]) => void;
}

/** How a recording is made. */
export interface SessionPlan {
  readonly kinds: readonly CaptureKind[];
  /** s */
  readonly countdown: number;
  /** s, after which it ends by itself. */
  readonly limit: number;
}

/** ms between two looks at the level. */
const TICK = 100;

/** One recording with the device itself: asked for, counted down, recorded, stopped by hand or at its limit. */
export class RecordingSession implements ReactiveController {
  state: SessionState = { kind: 'idle', problems: [] };
  devices: readonly GrantedCapture[] = [];
  /** What was not granted of what was asked for, while the rest goes on. */
  missing: readonly string[] = [];
  private timer: ReturnType<typeof setInterval> | undefined;
  private began = 0;

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly page: SessionHost,
  ) {
    host.addController(this);
  }

  hostDisconnected(): void {
    this.abandon();
  }

  /** Must be called in the user's tap itself: some phones grant a sensor only there. */
  async start(plan: SessionPlan): Promise<void> {
    this.show({ kind: 'asking' });
    this.missing = [];
    const name = `${new Date().toLocaleDateString('en-CA')} ${new Date().toTimeString().slice(0, 5).replace(':', '.')}`;
    const asked = plan.kinds.map((kind) => this.ask(kind, name));
    const answers = await Promise.allSettled(asked);
    const granted = answers.flatMap((answer) => (answer.status === 'fulfilled' ? [answer.value] : []));
    const problems = answers.flatMap((answer) =>
      answer.status === 'rejected' ? [reasonOf(answer.reason as unknown)] : [],
    );
    if (granted.length === 0) {
      this.show({ kind: 'idle', problems });
      return;
    }
    this.devices = granted;
    this.missing = problems;
    this.began = performance.now() + 1000 * plan.countdown;
    this.timer = setInterval(() => {
      this.tick(plan);
    }, TICK);
    this.tick(plan);
  }

  /** Ends the recording and hands it over. */
  async stop(): Promise<void> {
    if (this.state.kind !== 'recording') return;
    clearInterval(this.timer);
    this.show({ kind: 'finishing' });
    const { devices } = this;
    const made = await Promise.all(
      devices.map(async ({ capture, granted }) => ({ file: await capture.end(), granted })),
    );
    this.devices = [];
    this.show({ kind: 'idle', problems: this.missing });
    this.page.done(made);
  }

  /** Lets go of the devices; nothing is kept. */
  abandon(): void {
    clearInterval(this.timer);
    for (const { capture } of this.devices) capture.release();
    this.devices = [];
    this.show({ kind: 'idle', problems: [] });
  }

  private async ask(kind: CaptureKind, name: string): Promise<GrantedCapture> {
    if (kind === 'sound') {
      const capture = await captureSound(`Sound ${name}`);
      return { kind, capture, granted: capture.granted };
    }
    const capture = await captureMotion(`Motion ${name}`);
    return { kind, capture, granted: [...capture.granted, ...this.page.reach(capture.rate)] };
  }

  private tick({ limit }: SessionPlan): void {
    const elapsed = (performance.now() - this.began) / 1000;
    if (elapsed < 0) {
      this.show({ kind: 'counting', left: Math.ceil(-elapsed) });
      return;
    }
    if (this.state.kind === 'counting') for (const { capture } of this.devices) capture.begin();
    this.show({ kind: 'recording', elapsed });
    if (elapsed >= limit) void this.stop();
  }

  private show(state: SessionState): void {
    this.state = state;
    this.host.requestUpdate();
  }
}

function reasonOf(error: unknown): string {
  if (error instanceof CaptureError) return error.message;
  return `It could not be started (${error instanceof Error ? error.message : String(error)}). Record with the phone’s own recorder and choose the file above.`;
}
