import {
  answerLadder,
  nextTrial,
  startLadder,
  type LadderConclusion,
  type LadderState,
  type LadderTrial,
  type NextTrial,
  type ShaftLine,
} from '@sternline/core';
import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { LineAdvice } from '../model/advice.js';
import type { Trial } from '../model/project.js';
import { seenRecording } from '../model/seen-recording.js';
import { shared } from '../styles/shared.js';
import { AdviceChangedEvent } from './advice-events.js';
import { adviceClient } from './advice-worker.js';
import './ladder-rung.js';
import type { RungDoneEvent } from './ladder-rung.js';
import { causesSentence, conclusionSentence, stepWords, takesSentence, testTitle } from './ladder-words.js';
import { sectionStyles } from './section-styles.js';

/** The search for a cause, one question at a time: the next is the one that tells most for the least work. */
@customElement('ladder-section')
export class LadderSection extends LitElement {
  static override styles = [
    shared,
    sectionStyles,
    css`
      ol {
        margin: 0 0 var(--gap-large);
        padding-left: 1.5rem;
      }
      .others li {
        display: flex;
        flex-wrap: wrap;
        gap: 0.25rem 1rem;
        align-items: center;
        max-width: none;
      }
    `,
  ];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) advice: LineAdvice = {};
  /** Of this line. */
  @property({ attribute: false }) trials: readonly Trial[] = [];
  /** The rung that the user prefers to the one proposed. */
  @state() private preferred: LadderTrial['test'] | undefined;
  @state() private note = '';

  /** Whether an answer was just given: the eye and the keyboard then go to what it led to. */
  private answered = false;

  protected override updated(changed: PropertyValues<this>): void {
    if (!this.answered || !changed.has('advice')) return;
    this.answered = false;
    this.renderRoot.querySelector<HTMLElement>('.sentence')?.focus();
  }

  private get runs(): readonly Trial[] {
    return this.trials.filter(({ speed }) => speed !== undefined);
  }

  protected override render() {
    const { ladder } = this.advice;
    return html`<section aria-labelledby="ladder">
      <h2 id="ladder">What to try next, in order</h2>
      ${ladder ? this.renderSearch(ladder, nextTrial(ladder)) : this.renderStart()}
      <p role="status" class="aside">${this.note}</p>
    </section>`;
  }

  private renderStart() {
    const runs = this.runs.length;
    return html`<p class="sentence">
        One question at a time, and each next one is that which tells most for the least work.
      </p>
      <div class="row">
        ${
          runs > 0
            ? html`<button type="button" class="main" @click=${() => void this.startFromTrials()}>
                Begin with ${runs === 1 ? 'the trial' : `the ${runs} trials`} of this layout
              </button>`
            : nothing
        }
        <button
          type="button"
          class=${runs > 0 ? '' : 'main'}
          @click=${() => {
            this.change(startLadder({ line: this.line }));
          }}
        >
          Begin without recordings
        </button>
      </div>`;
  }

  private renderSearch(ladder: LadderState, { trial, others, conclusion }: NextTrial) {
    const known = trial ? [trial, ...others] : others;
    const rung = known.find(({ test }) => test === this.preferred) ?? trial;
    return html`
      ${
        conclusion
          ? this.renderConclusion(conclusion)
          : html`<p class="sentence" tabindex="-1" aria-live="polite">
              ${rung ? `Next: ${testTitle(rung.test).toLowerCase()}.` : 'Nothing that is left to try would tell more.'}
              ${causesSentence(ladder.causes)}
            </p>`
      }
      ${rung ? this.renderRung(rung, known, conclusion !== undefined) : nothing} ${this.renderTrail(ladder)}
    `;
  }

  private renderConclusion(conclusion: LadderConclusion) {
    return html`<p class="sentence" tabindex="-1" aria-live="polite">${conclusionSentence(conclusion)}</p>
      <h3>What to do, the cheapest first</h3>
      <ol>
        ${conclusion.fixes.map((fix) => html`<li>${fix}</li>`)}
      </ol>
      ${
        conclusion.reasons.length > 0
          ? html`<h3>Why</h3>
              <ul>
                ${conclusion.reasons.map((reason) => html`<li>${reason}</li>`)}
              </ul>`
          : nothing
      }`;
  }

  private renderRung(rung: LadderTrial, known: readonly LadderTrial[], concluded: boolean) {
    const others = known.filter(({ test }) => test !== rung.test);
    const question = html`<ladder-rung
        .rung=${rung}
        .trials=${this.runs}
        @rung-done=${this.onDone}
      ></ladder-rung>
      ${others.length > 0 ? this.renderOthers(others) : nothing}`;
    return concluded
      ? html`<details>
          <summary>Make sure with another trial</summary>
          ${question}
        </details>`
      : question;
  }

  private renderOthers(others: readonly LadderTrial[]) {
    return html`<details>
      <summary>Do another one first</summary>
      <ul class="others">
        ${others.map(
          (other) =>
            html`<li>
              <button type="button" @click=${() => (this.preferred = other.test)}>
                ${testTitle(other.test)}
              </button>
              <span class="aside">${takesSentence(other)}</span>
            </li>`,
        )}
      </ul>
    </details>`;
  }

  private renderTrail({ steps }: LadderState) {
    return html`${
        steps.length > 0
          ? html`<h3>Done so far</h3>
              <ol>
                ${steps.map((step) => html`<li>${stepWords(step)}</li>`)}
              </ol>`
          : nothing
      }
      <div class="row">
        <button
          type="button"
          @click=${() => {
            this.change(undefined);
          }}
        >
          Start the search again
        </button>
        <span class="hint">Undo takes the last answer back.</span>
      </div>`;
  }

  private readonly onDone = ({ test, answer }: RungDoneEvent): void => {
    const { ladder } = this.advice;
    if (!ladder) return;
    this.note = '';
    this.preferred = undefined;
    if ('outcome' in answer) {
      this.change(answerLadder(ladder, { test, outcome: answer.outcome }));
      return;
    }
    const [before, after] = [answer.before, answer.after].map((trial) => ({
      recording: seenRecording(trial),
      speed: trial.speed ?? 0,
    }));
    try {
      if (before && after) this.change(answerLadder(ladder, { test, before, after }));
    } catch (error) {
      this.note = `These two cannot answer it: ${error instanceof Error ? error.message : String(error)}`;
    }
  };

  private async startFromTrials(): Promise<void> {
    this.note = 'Weighing the trials together …';
    const { line } = this;
    try {
      const trials = this.runs.map((trial) => ({ recording: seenRecording(trial), speed: trial.speed ?? 0 }));
      const ladder = await adviceClient.ask('startSearch', { line, trials }).answer;
      this.note = '';
      // Another line may have been opened meanwhile: its search is not this one.
      if (this.line === line) this.change(ladder);
    } catch (error) {
      this.note = `The trials could not be weighed: ${error instanceof Error ? error.message : String(error)}`;
    }
  }

  private change(ladder: LadderState | undefined): void {
    const { ladder: _, ...others } = this.advice;
    this.answered = true;
    this.dispatchEvent(new AdviceChangedEvent(ladder ? { ...others, ladder } : others));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ladder-section': LadderSection;
  }
}
