import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ColumnReading, Recording } from '@sternline/core';
import type { ReadChoices } from '../model/analysis-types.js';
import { readingSentence } from '../model/reading-words.js';
import { shared } from '../styles/shared.js';

/** The file is to be read again with other choices. */
export class ReadAgainEvent extends Event {
  static readonly type = 'read-again';
  constructor(readonly choices: ReadChoices) {
    super(ReadAgainEvent.type, { bubbles: true, composed: true });
  }
}

const AXES = ['x', 'y', 'z'] as const;
/** Notes shown at once; the rest fold away. */
const NOTES = 3;

/** What a file was read as: a sentence, notes on its quality, and each column, to be overruled. */
@customElement('trial-reading')
export class TrialReading extends LitElement {
  static override styles = [
    shared,
    css`
      ul {
        margin: 0 0 var(--gap);
        padding-left: 1.25rem;
        max-width: 70ch;
        line-height: 1.45;
      }
      select {
        font: inherit;
        color: var(--ink);
        background: var(--sheet);
        border: 1px solid var(--line);
        border-radius: var(--radius);
        min-height: var(--touch);
      }
    `,
  ];

  @property({ attribute: false }) recording: Recording | undefined;
  /** Whether the file is still at hand. */
  @property({ type: Boolean }) rereadable = false;

  protected override render() {
    const { recording } = this;
    if (!recording) return nothing;
    const { notes, columns, sensors = [] } = recording.sampling;
    const more = notes.slice(NOTES);
    return html`
      <p>${readingSentence(recording)}</p>
      ${renderNotes(notes.slice(0, NOTES))}
      ${
        more.length > 0
          ? html`<details>
              <summary>${more.length} more on how it was read</summary>
              ${renderNotes(more)}
            </details>`
          : nothing
      }
      ${this.rereadable && sensors.length > 1 ? this.renderSensors(sensors.map((sensor) => sensor.name)) : nothing}
      ${columns.length > 0 ? this.renderColumns(columns) : nothing}
    `;
  }

  private renderSensors(names: readonly string[]) {
    return html`<p class="row">
      <span>The file holds several sensors. Read instead:</span>
      ${names.map(
        (name) =>
          html`<button
            type="button"
            @click=${() => {
              this.readAgain({ sensor: name });
            }}
          >
            ${name}
          </button>`,
      )}
    </p>`;
  }

  private renderColumns(columns: readonly ColumnReading[]) {
    return html`<details>
      <summary>What each column was taken for</summary>
      <div class="scroll" tabindex="0" role="group" aria-label="Columns">
        <table>
          <thead>
            <tr>
              <th scope="col">Column</th>
              <th scope="col">Taken for</th>
              <th scope="col">Unit</th>
              <th scope="col">Why</th>
            </tr>
          </thead>
          <tbody>
            ${columns.map((column) => this.renderColumn(column))}
          </tbody>
        </table>
      </div>
      ${
        this.rereadable
          ? html`<button type="button" @click=${this.readColumns}>Read it again so</button>`
          : html`<p class="aside">To read it with other columns, choose the file again.</p>`
      }
    </details>`;
  }

  private renderColumn(column: ColumnReading) {
    const name = column.header || `column ${column.index + 1}`;
    const roles = ['time', ...AXES, 'unused'];
    const role = roles.includes(column.role) ? column.role : 'unused';
    return html`<tr>
      <th scope="row">${name}</th>
      <td>
        ${
          this.rereadable
            ? html`<select aria-label=${`Take ${name} for`} data-index=${column.index}>
                ${roles.map((one) => html`<option value=${one} ?selected=${one === role}>${one}</option>`)}
              </select>`
            : column.role
        }
      </td>
      <td>${column.unit}</td>
      <td>${column.reason}</td>
    </tr>`;
  }

  private readonly readColumns = (): void => {
    const chosen: Record<string, number> = {};
    for (const select of this.renderRoot.querySelectorAll('select')) {
      if (select.value !== 'unused') chosen[select.value] = Number(select.dataset['index']);
    }
    this.readAgain({ columns: chosen });
  };

  private readAgain(choices: ReadChoices): void {
    this.dispatchEvent(new ReadAgainEvent(choices));
  }
}

function renderNotes(notes: readonly string[]) {
  if (notes.length === 0) return nothing;
  return html`<ul class="aside">
    ${notes.map((note) => html`<li>${note}</li>`)}
  </ul>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-reading': TrialReading;
  }
  interface HTMLElementEventMap {
    'read-again': ReadAgainEvent;
  }
}
