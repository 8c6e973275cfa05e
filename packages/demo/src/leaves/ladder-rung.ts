import type { LadderOutcome, LadderTrial } from '@sternline/core';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import '../elements/choice-field.js';
import type { ChoiceChangedEvent } from '../elements/events.js';
import type { Trial } from '../model/project.js';
import { shared } from '../styles/shared.js';
import { chanceWords, outcomeWords, takesSentence, testTitle } from './ladder-words.js';

/** A rung was done: its outcome as seen, or the ids of the trials to read it from. */
export class RungDoneEvent extends Event {
  static readonly type = 'rung-done';
  constructor(
    readonly test: LadderTrial['test'],
    readonly answer: { readonly outcome: LadderOutcome } | { readonly before: Trial; readonly after: Trial },
  ) {
    super(RungDoneEvent.type, { bubbles: true, composed: true });
  }
}

/** One question of the ladder: what to do, what to take care of, and what came of it. */
@customElement('ladder-rung')
export class LadderRung extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      .caution {
        border: 1px solid var(--warn);
        padding: 0.5rem 0.75rem;
        max-width: 74ch;
      }
      ul {
        list-style: none;
        margin: 0 0 var(--gap-large);
        padding: 0;
        display: flex;
        flex-direction: column;
        gap: 0.5rem;
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 15rem) minmax(0, 40rem);
        gap: 0.25rem 1rem;
        align-items: center;
      }
      li p {
        margin: 0;
      }
      li .aside {
        display: block;
      }
      .recordings {
        display: flex;
        flex-wrap: wrap;
        gap: 0.75rem 1.5rem;
        align-items: end;
        margin-bottom: var(--gap-large);
      }
      @media (max-width: 40rem) {
        li {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @property({ attribute: false }) rung!: LadderTrial;
  /** That its outcome may be read from. */
  @property({ attribute: false }) trials: readonly Trial[] = [];
  @state() private beforeId = '';
  @state() private afterId = '';

  protected override render() {
    const { rung } = this;
    return html`
      <h3>${testTitle(rung.test)}</h3>
      <p>${rung.instruction} <span class="aside">${takesSentence(rung)}</span></p>
      <p class="caution">${rung.caution}</p>
      <p><strong>What came of it?</strong></p>
      <ul>
        ${rung.outcomes.map(
          (meaning) =>
            html`<li>
              <button
                type="button"
                @click=${() => this.dispatchEvent(new RungDoneEvent(rung.test, { outcome: meaning.outcome }))}
              >
                ${outcomeWords(meaning.outcome)}
              </button>
              <p>${meaning.means} <span class="aside">${chanceWords(meaning)}</span></p>
            </li>`,
        )}
      </ul>
      ${rung.recordable && this.trials.length > 1 ? this.renderRecordings() : nothing}
    `;
  }

  private renderRecordings() {
    const before = this.trials.find(({ id }) => id === this.beforeId);
    const after = this.trials.find(({ id }) => id === this.afterId);
    const ready = before && after && before !== after;
    return html`<details>
      <summary>Or read it from two recordings</summary>
      <div class="recordings">
        ${this.renderChoice('Recorded before', this.beforeId, (id) => (this.beforeId = id))}
        ${this.renderChoice('Recorded after', this.afterId, (id) => (this.afterId = id))}
        <button
          type="button"
          ?disabled=${!ready}
          @click=${() => {
            if (ready) this.dispatchEvent(new RungDoneEvent(this.rung.test, { before, after }));
          }}
        >
          Read it from these
        </button>
      </div>
    </details>`;
  }

  private renderChoice(label: string, value: string, take: (id: string) => void) {
    return html`<choice-field
      label=${label}
      .value=${value}
      .choices=${[{ value: '', label: 'choose a trial' }, ...this.trials.map(({ id, name }) => ({ value: id, label: name }))]}
      @choice-changed=${(event: ChoiceChangedEvent) => {
        event.stopPropagation();
        take(event.choice);
      }}
    ></choice-field>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ladder-rung': LadderRung;
  }
  interface HTMLElementEventMap {
    'rung-done': RungDoneEvent;
  }
}
