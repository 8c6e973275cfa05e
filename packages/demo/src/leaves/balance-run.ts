import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import '../elements/choice-field.js';
import type { ChoiceChangedEvent, ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import type { FirstOrder } from '../model/advice-desk.js';
import type { BalanceRun, RunReading } from '../model/advice.js';
import type { Trial, Units } from '../model/project.js';
import { seenRecording } from '../model/seen-recording.js';
import { formatFigure } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { adviceClient } from './advice-worker.js';
import { writeAmplitude } from './balance-words.js';

/** The first order of one run was read, or taken back. */
export class RunReadEvent extends Event {
  static readonly type = 'run-read';
  constructor(
    readonly run: BalanceRun,
    readonly reading: RunReading | undefined,
    /** Where it came from, if from a recording. */
    readonly from?: Pick<FirstOrder, 'channel' | 'unit'>,
  ) {
    super(RunReadEvent.type, { bubbles: true, composed: true });
  }
}

/** The amplitude of the first order in one run of a balancing: written, or taken from a trial. */
@customElement('balance-run')
export class BalanceRunField extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        gap: 0.75rem 1.5rem;
        align-items: start;
      }
      p {
        flex: 1 1 100%;
        margin: 0;
      }
    `,
  ];

  @property() run: BalanceRun = 'found';
  @property() label = '';
  @property({ attribute: false }) reading: RunReading | undefined;
  /** Trials of the line, any of which may have been this run. */
  @property({ attribute: false }) trials: readonly Trial[] = [];
  /** rad/s, of the balancing. */
  @property({ type: Number }) speed = 0;
  @property() channel = '';
  @property() unit = '';
  @property() units: Units = 'metric';
  @state() private note = '';

  protected override render() {
    const { reading, trials } = this;
    return html`
      <number-field
        label=${this.label}
        unit=${this.unit === 'full scale' ? '' : this.unit}
        .min=${0}
        .max=${1e9}
        terse
        .decimals=${6}
        .value=${reading?.amplitude}
        hint="Of the first order; any unit, the same for all runs."
        @value-changed=${this.onValue}
      ></number-field>
      ${
        trials.length > 0
          ? html`<choice-field
              label=${`${this.label}: from a trial`}
              .value=${reading?.trialId ?? ''}
              .choices=${[{ value: '', label: 'written by hand' }, ...trials.map(({ id, name }) => ({ value: id, label: name }))]}
              @choice-changed=${(event: ChoiceChangedEvent) => {
                event.stopPropagation();
                void this.readFrom(event.choice);
              }}
            ></choice-field>`
          : nothing
      }
      <p role="status" class="aside">${this.note}</p>
    `;
  }

  private onValue(event: ValueChangedEvent): void {
    event.stopPropagation();
    const { value } = event;
    if (Number.isNaN(value)) return;
    this.note = '';
    this.dispatchEvent(new RunReadEvent(this.run, value === undefined ? undefined : { amplitude: value }));
  }

  private async readFrom(trialId: string): Promise<void> {
    const trial = this.trials.find(({ id }) => id === trialId);
    if (!trial) {
      if (this.reading) this.dispatchEvent(new RunReadEvent(this.run, { amplitude: this.reading.amplitude }));
      this.note = '';
      return;
    }
    this.note = 'Reading the first order …';
    try {
      const first = await this.firstOrder(trial);
      this.note = this.noteOf(first, trial);
      const reading = { amplitude: Number(first.amplitude.toPrecision(6)), error: first.error, trialId };
      this.dispatchEvent(new RunReadEvent(this.run, reading, first));
    } catch (error) {
      this.note = `It could not be read: ${error instanceof Error ? error.message : String(error)}`;
    }
  }

  private firstOrder(trial: Trial): Promise<FirstOrder> {
    const channel = this.channel === '' ? {} : { channel: this.channel };
    const input = { recording: seenRecording(trial), speed: trial.speed ?? this.speed, ...channel };
    return adviceClient.ask('firstOrder', input).answer;
  }

  private noteOf({ channel, unit, amplitude, error, seen }: FirstOrder, trial: Trial): string {
    const figure = `Channel ${channel}: ${writeAmplitude(amplitude, unit)} ± ${writeAmplitude(Number(error.toPrecision(2)))}.`;
    const unseen = seen ? '' : ' It does not stand above the noise: run longer, or faster.';
    const other =
      trial.speed !== undefined && Math.abs(trial.speed / this.speed - 1) > 0.02
        ? ` That trial ran at ${formatFigure(trial.speed, 'speed', this.units)}, not at ${formatFigure(this.speed, 'speed', this.units)}: all runs must have one speed.`
        : '';
    return `${figure}${unseen}${other}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'balance-run': BalanceRunField;
  }
  interface HTMLElementEventMap {
    'run-read': RunReadEvent;
  }
}
