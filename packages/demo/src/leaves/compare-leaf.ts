import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { compareLayouts, type ComparedFigure, type Comparison } from '../model/compare-layouts.js';
import type { ProjectLine, Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { compareSentence } from './compare-words.js';
import { LineCopiedEvent, LineOpenedEvent } from './leaf-events.js';
import { VERDICT_SIGNS, verdictName } from './verdict-words.js';

/** How many layouts fit side by side. */
const MOST = 4;

/** Two to four layouts at the wanted speed, figure by figure. */
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
      thead th {
        font-size: var(--text);
        min-width: 9rem;
        max-width: 14rem;
      }
      tbody th {
        min-width: 7rem;
        max-width: 16rem;
        position: sticky;
        left: 0;
        background: var(--sheet);
      }
      td.best {
        font-weight: 600;
        text-decoration: underline;
        text-decoration-thickness: 2px;
        text-underline-offset: 0.2em;
      }
      .open {
        text-align: start;
        padding-inline: 0.5rem;
      }
      td {
        padding-right: 1.5rem;
      }
    `,
  ];

  @property({ attribute: false }) lines: readonly ProjectLine[] = [];
  @property() openLine = '';
  @property({ type: Number }) wantedSpeed = 0;
  @property() units: Units = 'metric';
  @state() private picked: readonly string[] | undefined;

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
      <p class="hint">To try a change, duplicate a layout, change the copy under Line, and come back here.</p>
      <button type="button" @click=${() => this.dispatchEvent(new LineCopiedEvent(this.openLine))}>
        Duplicate the open layout
      </button>
    `;
  }

  /** Until the user picks, the first four with the open one among them. */
  private pickedLines(): readonly ProjectLine[] {
    const { lines, picked } = this;
    if (picked) return lines.filter(({ id }) => picked.includes(id));
    const others = lines.filter(({ id }) => id !== this.openLine).slice(0, MOST - 1);
    return lines.filter((entry) => entry.id === this.openLine || others.includes(entry));
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
    const comparison = compareLayouts(picked, this.wantedSpeed);
    return html`
      <p class="sentence">${compareSentence(comparison, this.wantedSpeed, this.units)}</p>
      <div class="scroll" tabindex="0" role="region" aria-label="Layouts side by side">
        <table>
          <caption class="unseen">
            Layouts side by side at ${formatFigure(this.wantedSpeed, 'speed', this.units)}
          </caption>
          <thead>
            <tr>
              <td></td>
              ${picked.map((entry) => this.renderHead(entry))}
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">At ${formatFigure(this.wantedSpeed, 'speed', this.units)}</th>
              ${comparison.assessments.map((one) => html`<td>${one ? `${VERDICT_SIGNS[one.verdict]} ${verdictName(one)}` : 'not computed'}</td>`)}
            </tr>
            ${comparison.figures.map((figure) => this.renderFigure(figure, comparison))}
          </tbody>
        </table>
      </div>
      <p class="hint">Best of a row: underlined and marked ★.</p>
    `;
  }

  private renderHead({ id, line }: ProjectLine): TemplateResult {
    const open = id === this.openLine;
    return html`<th scope="col">
      <button
        type="button"
        class="plain open"
        aria-current=${open ? 'true' : 'false'}
        title="Open this layout"
        @click=${() => this.dispatchEvent(new LineOpenedEvent(id))}
      >
        ${line.name}
      </button>
    </th>`;
  }

  private renderFigure(
    { name, quantity, values, best }: ComparedFigure,
    { names }: Comparison,
  ): TemplateResult {
    return html`<tr>
      <th scope="row">${name}</th>
      ${names.map((_, index) => {
        const value = values[index];
        const top = best.includes(index);
        return html`<td class=${top ? 'best' : ''}>
          ${value === undefined ? 'none' : formatFigure(value, quantity, this.units)}${top ? ' ★' : ''}
        </td>`;
      })}
    </tr>`;
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
