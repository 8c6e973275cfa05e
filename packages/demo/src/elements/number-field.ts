import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { ValueChangedEvent } from './events.js';
import { fieldStyles } from './field-styles.js';
import { parseNumber } from './parse-number.js';

/** A number with its unit and a line on where to measure it; takes decimal point or comma. */
@customElement('number-field')
export class NumberField extends LitElement {
  static override styles = [
    shared,
    fieldStyles,
    css`
      input {
        text-align: end;
        width: var(--field-width, 7.5rem);
      }
    `,
  ];

  static override shadowRootOptions: ShadowRootInit = {
    ...LitElement.shadowRootOptions,
    delegatesFocus: true,
  };

  @property() label = '';
  /** In the unit shown; undefined leaves the field empty, NaN leaves the text as the user wrote it. */
  @property({ attribute: false }) value: number | undefined;
  @property() unit = '';
  @property() hint = '';
  /** What is wrong and what would be right, said by whoever checks the value. */
  @property() error = '';
  @property({ type: Number }) min: number | undefined;
  @property({ type: Number }) max: number | undefined;
  /** Decimals that are shown; more that the user wrote are kept in the value. */
  @property({ type: Number }) decimals = 2;
  /** How far an arrow key moves the value. */
  @property({ type: Number }) step: number | undefined;
  @property({ type: Boolean }) compact = false;
  /** Leaves the range unsaid until it is broken. */
  @property({ type: Boolean }) terse = false;

  @state() private text = '';
  @query('input') private readonly input!: HTMLInputElement;

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('value')) this.text = this.shownText();
  }

  protected override render() {
    const problem = this.ownProblem() || this.error;
    return html`
      <label class=${this.compact ? 'unseen' : ''} for="input">${this.label}</label>
      <span class="box">
        <input
          id="input"
          inputmode="decimal"
          autocomplete="off"
          spellcheck="false"
          .value=${this.text}
          aria-invalid=${problem ? 'true' : 'false'}
          aria-describedby="unit hint problem"
          @change=${this.onChange}
          @keydown=${this.onKeydown}
        />
        <span id="unit" class="unit">${this.unit}</span>
      </span>
      <span id="hint" class="hint">${this.compact ? nothing : this.hint}${this.range()}</span>
      <span id="problem" class="problem" role="alert">${problem}</span>
    `;
  }

  // A text that already says the value stays as the user wrote it: 12,50 is not turned into 12.5 under their hands.
  private shownText(): string {
    const { value, text } = this;
    if (value === undefined) return '';
    if (Number.isNaN(value)) return text;
    const written = parseNumber(text);
    const same = written !== undefined && Math.abs(written - value) <= 1e-9 * Math.max(1, Math.abs(value));
    return same ? text : String(Number(value.toFixed(this.decimals)));
  }

  private ownProblem(): string {
    const value = parseNumber(this.text);
    if (value === undefined) return '';
    if (Number.isNaN(value)) return `“${this.text}” is not a number. Write it like 12.5 or 12,5.`;
    const { min, max, unit } = this;
    if (min !== undefined && value < min) return `Must be at least ${grouped(min)} ${unit}, not ${value}.`;
    if (max !== undefined && value > max) return `Must be at most ${grouped(max)} ${unit}, not ${value}.`;
    return '';
  }

  private range(): string {
    if (this.compact || this.terse || this.min === undefined || this.max === undefined) return '';
    return ` ${grouped(this.min)} to ${grouped(this.max)} ${this.unit}.`;
  }

  private onChange(event: Event): void {
    event.stopPropagation();
    this.commit(this.input.value);
  }

  private onKeydown(event: KeyboardEvent): void {
    const direction = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    if (direction === 0 || this.step === undefined) return;
    const value = parseNumber(this.input.value);
    if (value === undefined || Number.isNaN(value)) return;
    event.preventDefault();
    const next = value + direction * this.step * (event.shiftKey ? 10 : 1);
    this.commit(String(Number(Math.min(this.max ?? next, Math.max(this.min ?? next, next)).toFixed(9))));
  }

  private commit(text: string): void {
    this.text = text;
    this.dispatchEvent(new ValueChangedEvent(this.ownProblem() ? NaN : parseNumber(text)));
  }
}

function grouped(value: number): string {
  const [whole = '', fraction] = String(value).replace('-', '−').split('.');
  const apart = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, '\u202f') : whole;
  return fraction === undefined ? apart : `${apart}.${fraction}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'number-field': NumberField;
  }
}
