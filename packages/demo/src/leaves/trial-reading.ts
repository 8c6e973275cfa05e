import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ColumnReading, Recording } from '@sternline/core';
import '../elements/choice-field.js';
import type { ChoiceChangedEvent, ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import type { ReadChoices } from '../model/analysis-types.js';
import { plainNote } from '../model/plain-note.js';
import { shared } from '../styles/shared.js';

/** The file is to be read again with other choices. */
export class ReadAgainEvent extends Event {
  static readonly type = 'read-again';
  constructor(readonly choices: ReadChoices) {
    super(ReadAgainEvent.type, { bubbles: true, composed: true });
  }
}

const AXES = ['x', 'y', 'z'] as const;
const UNITS = [
  { value: '', label: 'as the file says' },
  ...['m/s²', 'g', 'mg', 'rad/s', '°/s'].map((unit) => ({ value: unit, label: unit })),
];

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
      tbody th,
      tbody td {
        vertical-align: middle;
      }
      .again {
        align-items: end;
        margin: var(--gap) 0;
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
  @state() private unit = '';
  private rate: number | undefined;

  protected override render() {
    const { recording } = this;
    if (!recording) return nothing;
    const { notes, columns } = recording.sampling;
    const said = notes.map(plainNote);
    return html`
      ${this.rereadable ? this.renderSensors(otherSensors(recording)) : nothing}
      ${
        said.length + columns.length > 0
          ? html`<details>
              <summary>${moreWords(said.length, columns.length)}</summary>
              ${renderNotes(said)} ${columns.length > 0 ? this.renderColumns(columns) : nothing}
            </details>`
          : nothing
      }
    `;
  }

  private renderSensors(names: readonly string[]) {
    if (names.length === 0) return nothing;
    return html`<p class="row">
      <span>Another sensor is in the file. Read instead:</span>
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
    return html`<div class="scroll" tabindex="0" role="group" aria-label="Columns">
        <table>
          <caption>
            What each column was taken for
          </caption>
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
      ${this.rereadable ? this.renderAgain() : html`<p class="aside">To read it otherwise, choose the file again.</p>`}`;
  }

  private renderAgain() {
    return html`<div class="row again">
      <choice-field
        label="Unit of the axes"
        .choices=${UNITS}
        value=${this.unit}
        @choice-changed=${(event: ChoiceChangedEvent) => {
          event.stopPropagation();
          this.unit = event.choice;
        }}
      ></choice-field>
      <number-field
        label="Samples a second, if not as stamped"
        unit="Hz"
        .min=${0.1}
        .max=${1_000_000}
        @value-changed=${(event: ValueChangedEvent) => {
          event.stopPropagation();
          this.rate = event.value;
        }}
      ></number-field>
      <button type="button" @click=${this.readColumns}>Read it again so</button>
    </div>`;
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
    const places: Record<string, number> = {};
    for (const select of this.renderRoot.querySelectorAll('select')) {
      if (select.value !== 'unused') places[select.value] = Number(select.dataset['index']);
    }
    const columns = this.unit === '' ? places : { ...places, unit: this.unit };
    const { rate } = this;
    this.readAgain(rate === undefined || Number.isNaN(rate) ? { columns } : { columns, sampleRate: rate });
  };

  private readAgain(choices: ReadChoices): void {
    this.dispatchEvent(new ReadAgainEvent(choices));
  }
}

function otherSensors({ channels, sampling }: Recording): string[] {
  const shown = channels[0]?.unit === 'rad/s' ? 'rotation' : 'acceleration';
  return (sampling.sensors ?? []).filter((sensor) => sensor.quantity !== shown).map((sensor) => sensor.name);
}

function moreWords(notes: number, columns: number): string {
  const parts = [
    ...(notes > 0 ? [`${notes} ${notes === 1 ? 'note' : 'notes'} on its quality`] : []),
    ...(columns > 0 ? ['what each column was taken for'] : []),
  ].join(' and ');
  return parts.charAt(0).toUpperCase() + parts.slice(1);
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
