import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { PropertyValues } from 'lit';
import { compareLayouts, type LayoutComparison } from '../model/compare-layouts.js';
import { layoutTolerances, SHED_TOLERANCES, type LayoutTolerances } from '../model/layout-tolerances.js';
import type { ProjectLine, Trial, Units } from '../model/project.js';
import { shared } from '../styles/shared.js';
import { adviceProgress } from './advice-progress.js';
import { AdviceTask } from './advice-task.js';
import './compare-spread.js';
import './compare-table.js';
import './compare-trials.js';
import { chanceSentence, compareSentence, listNames } from './compare-words.js';
import { LineCopiedEvent } from './leaf-events.js';
import './remedy-section.js';

/** How many layouts fit side by side. */
const MOST = 4;

/** Two to four layouts at the wanted speed, what would change the open one most, and what a change did. */
@customElement('compare-leaf')
export class CompareLeaf extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      fieldset {
        border: 0;
        margin: 0 0 var(--gap-large);
        padding: 0;
      }
      legend {
        font-weight: 600;
        padding: 0;
        margin-bottom: 0.25rem;
      }
      .picks label {
        display: inline-flex;
        align-items: center;
        gap: 0.5rem;
        min-height: var(--touch);
        margin-right: 1.5rem;
        cursor: pointer;
      }
      input[type='checkbox'] {
        accent-color: var(--accent);
        width: 1.25rem;
        height: 1.25rem;
        flex: none;
      }
      compare-spread {
        display: block;
        margin-bottom: var(--gap);
      }
    `,
  ];

  @property({ attribute: false }) lines: readonly ProjectLine[] = [];
  @property({ attribute: false }) trials: readonly Trial[] = [];
  @property() openLine = '';
  @property({ type: Number }) wantedSpeed = 0;
  @property({ attribute: false }) tolerances: LayoutTolerances = SHED_TOLERANCES;
  @property() units: Units = 'metric';
  @state() private picked: readonly string[] | undefined;

  private readonly spread = new AdviceTask(this, 'compareLayouts');

  // A layout that is opened here joins those on show, where there is room.
  protected override willUpdate(changed: PropertyValues<this>): void {
    const { picked, openLine } = this;
    if (!changed.has('openLine') || !picked || picked.includes(openLine)) return;
    this.picked = [...picked.slice(0, MOST - 1), openLine];
  }

  protected override render() {
    const picked = this.pickedLines();
    return html`
      <h2>Which layout?</h2>
      ${
        picked.length > 1
          ? this.renderComparison(picked)
          : html`<p class="sentence">Pick two to four layouts to set side by side.</p>`
      }
      ${this.renderPicks(picked)}
      <compare-spread .tolerances=${this.tolerances} units=${this.units}></compare-spread>
      <p class="hint">To try a change, duplicate a layout, change the copy under Line, and come back here.</p>
      <button type="button" @click=${() => this.dispatchEvent(new LineCopiedEvent(this.openLine))}>
        Duplicate the open layout
      </button>
      ${this.renderRemedies()}
      <compare-trials .trials=${this.trials} .lines=${this.lines}></compare-trials>
    `;
  }

  private renderRemedies() {
    const open = this.lines.find(({ id }) => id === this.openLine);
    if (!open) return nothing;
    return html`<remedy-section
      .line=${open.line}
      .wantedSpeed=${this.wantedSpeed}
      units=${this.units}
    ></remedy-section>`;
  }

  /** The open one in front; until the user picks, with the first three others. */
  private pickedLines(): readonly ProjectLine[] {
    const { lines, picked, openLine } = this;
    const others = lines.filter(({ id }) => id !== openLine);
    const chosen = picked
      ? lines.filter(({ id }) => picked.includes(id))
      : lines.filter((entry) => entry.id === openLine || others.slice(0, MOST - 1).includes(entry));
    return [...chosen].sort((a, b) => Number(b.id === openLine) - Number(a.id === openLine));
  }

  private renderPicks(picked: readonly ProjectLine[]): TemplateResult {
    const full = picked.length >= MOST;
    return html`<fieldset class="picks">
      <legend>Layouts to set side by side${full ? ' (four at most)' : ''}</legend>
      ${this.lines.map((entry) => {
        const on = picked.includes(entry);
        return html`<label>
          <input
            type="checkbox"
            .checked=${on}
            ?disabled=${!on && full}
            @change=${() => {
              this.toggle(entry.id, picked);
            }}
          />
          ${entry.line.name}
        </label>`;
      })}
    </fieldset>`;
  }

  private renderComparison(picked: readonly ProjectLine[]): TemplateResult {
    const { wantedSpeed: speed, units } = this;
    const entered = compareLayouts(picked, speed);
    const { entries, left } = entered;
    const missing = left.length > 0 ? `${listNames(left)} could not be computed.` : '';
    if (!entered.comparison) return html`<p class="sentence">${missing}</p>`;
    const state = this.spreadOf(entered);
    const comparison = state.kind === 'done' && state.answer ? state.answer : entered.comparison;
    return html`
      <p class="sentence">${compareSentence(comparison, speed, units)} ${missing}</p>
      ${adviceProgress(state, this.spread, 'Drawing each layout 200 times, its measures off by as much as they may be')}
      ${state.kind === 'done' ? html`<p>${chanceSentence(comparison)}</p>` : nothing}
      <compare-table
        .comparison=${comparison}
        .entries=${entries}
        .openLine=${this.openLine}
        .wantedSpeed=${speed}
        units=${units}
      ></compare-table>
    `;
  }

  private spreadOf({ entries }: LayoutComparison) {
    const { wantedSpeed: speed, tolerances } = this;
    const lines = entries.map(({ line }) => line);
    return this.spread.of([speed, tolerances, ...lines], () => ({
      lines,
      options: { speed, tolerances: lines.map((line) => layoutTolerances(line, tolerances)) },
    }));
  }

  private toggle(id: string, picked: readonly ProjectLine[]): void {
    const ids = picked.map((entry) => entry.id);
    this.picked = ids.includes(id) ? ids.filter((other) => other !== id) : [...ids, id];
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'compare-leaf': CompareLeaf;
  }
}
