import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Recording } from '@sternline/core';
import '../elements/choice-field.js';
import { TrialChangedEvent } from '../elements/events.js';
import type { ChoiceChangedEvent } from '../elements/events.js';
import type { AlignmentOutcome } from '../model/analysis-desk.js';
import { alignmentSentence, partOnOther } from '../model/alignment-words.js';
import type { Trial } from '../model/project.js';
import type { RecordingPart } from '../model/recording-part.js';
import { shared } from '../styles/shared.js';

/** Sets two recordings on one clock. */
export type Align = (first: Recording, second: Recording) => Promise<AlignmentOutcome>;

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
  @state() private otherId = '';
  @state() private outcome: { readonly of: string; readonly found: AlignmentOutcome } | undefined;
  @state() private working = false;

  protected override render() {
    const { trial, others } = this;
    if (!trial || others.length === 0) return nothing;
    const other = others.find(({ id }) => id === this.otherId) ?? others[0];
    if (!other) return nothing;
    const key = `${trial.id} ${other.id}`;
    return html`<details>
      <summary>Another recording of the same run</summary>
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
      </div>
      <div role="status">
        ${this.outcome?.of === key ? this.renderFound(this.outcome.found, { trial, other }) : nothing}
      </div>
    </details>`;
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
    if (!this.align) return;
    this.working = true;
    try {
      const found = await this.align(trial.recording, other.recording);
      this.outcome = { of: `${trial.id} ${other.id}`, found };
    } catch {
      // Cancelled with the rest of the work; the button is there to ask again.
      this.outcome = undefined;
    } finally {
      this.working = false;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-pair': TrialPair;
  }
}
