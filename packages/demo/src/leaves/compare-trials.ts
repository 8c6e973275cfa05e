import type { RecordingComparison } from '@sternline/core';
import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import '../elements/choice-field.js';
import type { ChoiceChangedEvent } from '../elements/events.js';
import type { Project, Trial } from '../model/project.js';
import { seenRecording } from '../model/seen-recording.js';
import { shared } from '../styles/shared.js';
import { adviceProgress } from './advice-progress.js';
import { AdviceTask } from './advice-task.js';
import { trialsSentence, trialsTable } from './compare-trials-words.js';
import '../elements/data-table.js';
import { sectionStyles } from './section-styles.js';

/** Before and after: what a change did, on the same orders at the same speed. */
@customElement('compare-trials')
export class CompareTrials extends LitElement {
  static override styles = [shared, sectionStyles];

  @property({ attribute: false }) trials: readonly Trial[] = [];
  @property({ attribute: false }) lines: Project['lines'] = [];
  @state() private beforeId = '';
  @state() private afterId = '';

  private readonly task = new AdviceTask(this, 'compareTrials');

  protected override render() {
    const before = this.trials.find(({ id }) => id === this.beforeId);
    const after = this.trials.find(({ id }) => id === this.afterId);
    return html`<section aria-labelledby="before-after">
      <h2 id="before-after">Did the change help?</h2>
      ${this.renderAnswer(before, after)}
      <div class="fields">
        ${this.renderChoice('Trial before the change', this.beforeId, (id) => (this.beforeId = id))}
        ${this.renderChoice('Trial after the change', this.afterId, (id) => (this.afterId = id))}
      </div>
    </section>`;
  }

  private renderAnswer(before: Trial | undefined, after: Trial | undefined) {
    const said = (text: string) => html`<p class="sentence" aria-live="polite">${text}</p>`;
    if (this.trials.length < 2)
      return said('Two trials, one before a change and one after it, tell what it did.');
    if (!before || !after) return said('Choose a trial before the change and one after it.');
    if (before === after) return said('These are one and the same trial: choose two.');
    const untold = [before, after].find(({ speed }) => speed === undefined);
    if (untold) return said(`Tell the shaft speed of “${untold.name}” under Trials first.`);
    const line = this.lines.find(({ id }) => id === before.lineId)?.line;
    const speed = { before: before.speed ?? 0, after: after.speed ?? 0 };
    const state = this.task.of([before, after, line], () => ({
      before: seenRecording(before),
      after: seenRecording(after),
      options: { speed, ...(line ? { line } : {}) },
    }));
    return html`${adviceProgress(state, this.task, 'Comparing the two recordings')}
    ${state.answer ? html`<div class=${state.kind === 'working' ? 'stale' : ''}>${this.renderComparison(state.answer)}</div>` : nothing}`;
  }

  private renderComparison(comparison: RecordingComparison) {
    return html`<p class="sentence" aria-live="polite">${trialsSentence(comparison)}</p>
      <data-table .table=${trialsTable(comparison)}></data-table>
      <h3>What this must be taken with</h3>
      <ul>
        ${comparison.statements.map(({ sentence }) => html`<li>${sentence}</li>`)}
      </ul>`;
  }

  private renderChoice(label: string, value: string, take: (id: string) => void) {
    const choices = [
      { value: '', label: 'choose a trial' },
      ...this.trials.map(({ id, name }) => ({ value: id, label: name })),
    ];
    return html`<choice-field
      label=${label}
      .value=${value}
      .choices=${choices}
      @choice-changed=${(event: ChoiceChangedEvent) => {
        event.stopPropagation();
        take(event.choice);
      }}
    ></choice-field>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'compare-trials': CompareTrials;
  }
}
