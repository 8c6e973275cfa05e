import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Recording, SeparatedLine } from '@sternline/core';
import '../elements/choice-field.js';
import { TrialChangedEvent } from '../elements/events.js';
import type { ChoiceChangedEvent } from '../elements/events.js';
import type { RunOfTrial } from '../model/analysis-client.js';
import type { AlignmentOutcome } from '../model/analysis-desk.js';
import { CancelledError } from '../model/cancelled-error.js';
import { alignmentSentence, partOnOther } from '../model/alignment-words.js';
import type { Trial } from '../model/project.js';
import type { RecordingPart } from '../model/recording-part.js';
import { separatedSentences } from '../model/separate-words.js';
import { shared } from '../styles/shared.js';

/** Sets two recordings on one clock. */
export type Align = (first: Recording, second: Recording) => Promise<AlignmentOutcome>;

/** Tells the lines of one recording by another at another speed. */
export type Separate = (first: RunOfTrial, second: RunOfTrial) => Promise<readonly SeparatedLine[]>;

/** Share by which speeds must differ for a second one to tell orders apart. */
const APART = 0.03;

/** Another recording of the same run, as motion beside sound: how the two lie in time, and the same stretch of both. */
@customElement('trial-pair')
export class TrialPair extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      .row {
        align-items: end;
        margin-bottom: var(--gap);
      }
    `,
  ];

  @property({ attribute: false }) trial: Trial | undefined;
  /** Trials that may be of the same run. */
  @property({ attribute: false }) others: readonly Trial[] = [];
  /** The stretch of `trial` that is read. */
  @property({ attribute: false }) stretch: RecordingPart | undefined;
  @property({ attribute: false }) align: Align | undefined;
  @property({ attribute: false }) separate: Separate | undefined;
  @state() private separated: { readonly of: string; readonly lines: readonly SeparatedLine[] } | undefined;
  @state() private otherId = '';
  @state() private outcome: { readonly of: string; readonly found: AlignmentOutcome } | undefined;
  @state() private working = false;
  @state() private problem = '';

  protected override render() {
    const { trial, others } = this;
    if (!trial || others.length === 0) return nothing;
    const other = others.find(({ id }) => id === this.otherId) ?? others[0];
    if (!other) return nothing;
    const key = `${trial.id} ${other.id}`;
    return html`<details>
      <summary>Beside another recording</summary>
      <p class="aside">
        Sound and motion of one run are set on one clock by taps that both heard: tap the hull three times at
        uneven pauses when both record, or let the level tell it.
      </p>
      <div class="row">
        <choice-field
          label="The other recording"
          value=${other.id}
          .choices=${others.map(({ id, name }) => ({ value: id, label: name }))}
          @choice-changed=${(event: ChoiceChangedEvent) => {
            event.stopPropagation();
            this.otherId = event.choice;
          }}
        ></choice-field>
        <button type="button" ?disabled=${this.working} @click=${() => void this.find(trial, other)}>
          Set both on one clock
        </button>
        ${this.renderSeparate({ trial, other })}
      </div>
      <div role="status">
        ${this.outcome?.of === key ? this.renderFound(this.outcome.found, { trial, other }) : nothing}
        ${this.renderSeparated(key)}
      </div>
      <p class="problem" role="alert">${this.problem}</p>
    </details>`;
  }

  /** A line that folds moves against the shaft when the speed changes: two speeds tell what one leaves open. */
  private renderSeparate(pair: { readonly trial: Trial; readonly other: Trial }) {
    const { trial, other } = pair;
    const [first, second] = [trial.speed, other.speed];
    if (first === undefined || second === undefined || Math.abs(second / first - 1) < APART) return nothing;
    if (trial.recording.sampling.kind !== other.recording.sampling.kind) return nothing;
    return html`<button
      type="button"
      ?disabled=${this.working}
      @click=${() => void this.tellApart({ ...trial, speed: first }, { ...other, speed: second })}
    >
      Tell folded orders apart by both speeds
    </button>`;
  }

  private renderSeparated(key: string) {
    if (this.separated?.of !== key) return nothing;
    return html`<ul>
      ${separatedSentences(this.separated.lines).map((sentence) => html`<li>${sentence}</li>`)}
    </ul>`;
  }

  private async tellApart(trial: Trial & RunOfTrial, other: Trial & RunOfTrial): Promise<void> {
    await this.work(async () => {
      const lines = await this.separate?.(trial, other);
      this.separated = lines && { of: `${trial.id} ${other.id}`, lines };
    });
  }

  /** Work that is cancelled with the rest leaves the page as it was. */
  private async work(job: () => Promise<void>): Promise<void> {
    this.working = true;
    this.problem = '';
    try {
      await job();
    } catch (error) {
      this.problem = error instanceof CancelledError ? '' : 'These two recordings do not tell it.';
    } finally {
      this.working = false;
    }
  }

  private renderFound(found: AlignmentOutcome, pair: { readonly trial: Trial; readonly other: Trial }) {
    const { trial, other } = pair;
    const part =
      this.stretch && found.kind === 'aligned'
        ? partOnOther(this.stretch, found.alignment, other)
        : undefined;
    return html`<p>${alignmentSentence(found, { trial: trial.name, other: other.name })}</p>
      ${
        part
          ? html`<button
              type="button"
              @click=${() => this.dispatchEvent(new TrialChangedEvent<Trial>({ ...other, part }))}
            >
              Read the same stretch of “${other.name}”
            </button>`
          : nothing
      }`;
  }

  private async find(trial: Trial, other: Trial): Promise<void> {
    await this.work(async () => {
      const found = await this.align?.(trial.recording, other.recording);
      this.outcome = found && { of: `${trial.id} ${other.id}`, found };
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-pair': TrialPair;
  }
}
