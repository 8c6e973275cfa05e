import { css, html, LitElement } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { describeReach } from '@sternline/core';
import type { ShaftLine } from '@sternline/core';
import '../elements/choice-field.js';
import type { ChoiceChangedEvent } from '../elements/events.js';
import { levelWords } from '../model/meter-words.js';
import { shared } from '../styles/shared.js';
import { RecordingSession } from './recording-session.js';
import type { CaptureKind, GrantedCapture, MadeRecording } from './recording-session.js';

/** The page recorded something. */
export class RecordedEvent extends Event {
  static readonly type = 'recorded';
  constructor(readonly made: readonly MadeRecording[]) {
    super(RecordedEvent.type, { bubbles: true, composed: true });
  }
}

const KINDS: readonly {
  readonly value: string;
  readonly label: string;
  readonly kinds: readonly CaptureKind[];
}[] = [
  { value: 'sound', label: 'Sound', kinds: ['sound'] },
  { value: 'motion', label: 'Motion', kinds: ['motion'] },
  { value: 'both', label: 'Sound and motion together', kinds: ['sound', 'motion'] },
];
const LIMITS = [10, 20, 30, 60, 120].map((seconds) => ({
  value: String(seconds),
  label: `${seconds} s at most`,
}));
const COUNTDOWNS = [3, 5, 10, 20].map((seconds) => ({ value: String(seconds), label: `after ${seconds} s` }));

/** Records sound or motion with the device itself, with what it granted and what that can show. */
@customElement('trial-recorder')
export class TrialRecorder extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      .fields {
        align-items: end;
        gap: var(--gap) var(--gap-large);
        margin-bottom: var(--gap);
      }
      ul {
        margin: 0 0 var(--gap);
        padding-left: 1.25rem;
        max-width: 70ch;
        line-height: 1.45;
      }
      .safety {
        border-left: 3px solid var(--hatch);
        padding-left: 0.75rem;
      }
      .count {
        font-size: var(--text-huge);
        font-weight: 600;
      }
      meter,
      progress {
        width: min(100%, 24rem);
        height: 1.25rem;
        accent-color: var(--accent);
      }
      label {
        display: block;
      }
    `,
  ];

  /** rad/s */
  @property({ type: Number }) wantedSpeed = 0;
  @property({ attribute: false }) line: ShaftLine | undefined;
  @state() private kind = 'sound';
  @state() private limit = '30';
  @state() private countdown = '5';

  private readonly session = new RecordingSession(this, {
    reach: (sampleRate) => this.reach(sampleRate),
    done: (made) => this.dispatchEvent(new RecordedEvent(made)),
  });

  protected override render() {
    const { state: at } = this.session;
    switch (at.kind) {
      case 'idle':
        return this.renderPlan(at.problems);
      case 'asking':
        return html`<p role="status">Asking for the ${this.kind === 'sound' ? 'microphone' : 'sensor'} …</p>`;
      case 'counting':
        return html`<p class="count" role="status">${at.left} s</p>
          <p>Start the motor now, and let it run steadily, or run it up slowly.</p>
          ${this.renderDevices()} ${this.renderButton('Do not record', this.abandon)}`;
      case 'recording':
        return html`<p role="status">Recording.</p>
          ${this.renderTime(at.elapsed)} ${this.renderDevices()}
          ${this.renderButton('Stop and read it', this.stop)}`;
      case 'finishing':
        return html`<p role="status">Putting the recording together …</p>`;
    }
  }

  private renderPlan(problems: readonly string[]) {
    return html`
      <p>
        Sound leads: it shows every order. Motion supports, where this device gives it fast enough. Tape the
        phone, out of its case, to the bearers or a bulkhead beside the motor, each time in the same place and
        the same way round; not to a thin panel. Long strong shaking can harm a camera’s stabiliser: keep runs
        short.
      </p>
      <div class="row fields">
        ${this.renderChoice('Record', { value: this.kind, choices: KINDS, take: (kind) => (this.kind = kind) })}
        ${this.renderChoice('Starts', {
          value: this.countdown,
          choices: COUNTDOWNS,
          take: (countdown) => (this.countdown = countdown),
        })}
        ${this.renderChoice('Lasts', { value: this.limit, choices: LIMITS, take: (limit) => (this.limit = limit) })}
      </div>
      <p class="safety">
        Before it spins: the model held fast, the propeller guarded or off, eyes protected, fingers, hair and
        loose clothes clear, nobody near. Pass quickly through a speed that shakes, never dwell there. Dry
        bushes heat: in air, seconds. Disconnect the battery before you touch the line; charge and store
        lithium cells as their maker says. On the water keep clear of swimmers and wildlife, and follow the
        local rules.
      </p>
      <button type="button" class="main" @click=${this.start}>Start a recording</button>
      <div role="alert">${problems.map((problem) => html`<p class="problem">${problem}</p>`)}</div>
    `;
  }

  private renderChoice(
    label: string,
    field: {
      readonly value: string;
      readonly choices: readonly { readonly value: string; readonly label: string }[];
      readonly take: (choice: string) => void;
    },
  ) {
    return html`<choice-field
      label=${label}
      value=${field.value}
      .choices=${field.choices}
      @choice-changed=${(event: ChoiceChangedEvent) => {
        event.stopPropagation();
        field.take(event.choice);
      }}
    ></choice-field>`;
  }

  private renderTime(elapsed: number) {
    const limit = Number(this.limit);
    return html`<label for="time">${Math.min(elapsed, limit).toFixed(0)} of ${limit} s</label>
      <progress id="time" max=${limit} .value=${Math.min(elapsed, limit)}></progress>`;
  }

  private renderDevices() {
    const { devices, missing } = this.session;
    return html`${devices.map(renderMeter)}
      <ul>
        ${devices.flatMap(({ granted }) => granted).map((sentence) => html`<li>${sentence}</li>`)}
        ${missing.map((sentence) => html`<li class="problem">${sentence}</li>`)}
      </ul>`;
  }

  private renderButton(label: string, does: () => void) {
    return html`<button type="button" class="main" @click=${does}>${label}</button>`;
  }

  private readonly start = (): void => {
    const kinds = KINDS.find(({ value }) => value === this.kind)?.kinds ?? ['sound'];
    void this.session.start({ kinds, countdown: Number(this.countdown), limit: Number(this.limit) });
  };

  private readonly stop = (): void => {
    void this.session.stop();
  };

  private readonly abandon = (): void => {
    this.session.abandon();
  };

  /** What a rate shows of the orders in question at the wanted speed. */
  private reach(sampleRate: number): string[] {
    const blades = this.line?.propeller?.blades;
    const orders = [...new Set([1, 2, ...(blades === undefined ? [] : [blades])])];
    if (!(this.wantedSpeed > 0)) return [];
    return describeReach({ sampleRate, speed: this.wantedSpeed, orders });
  }
}

function renderMeter({ kind, capture }: GrantedCapture) {
  const { share, words } = levelWords(kind, capture.level());
  return html`<label for=${kind}>${kind === 'sound' ? 'Loudness' : 'Shaking'}: ${words}</label>
    <meter id=${kind} min="0" max="1" low="0.2" high="0.95" optimum="0.6" .value=${share}></meter>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-recorder': TrialRecorder;
  }
  interface HTMLElementEventMap {
    recorded: RecordedEvent;
  }
}
