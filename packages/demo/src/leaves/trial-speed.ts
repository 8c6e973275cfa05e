import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import type { SpeedSuggestion, TrialAnalysis } from '../model/analysis-types.js';
import type { Units } from '../model/project.js';
import { speedSentence } from '../model/speed-sentence.js';
import { formatFigure, fromScreen, toScreen } from '../model/units.js';
import { shared } from '../styles/shared.js';

/** A shaft speed was told, in rad/s, or taken back. */
export class SpeedToldEvent extends Event {
  static readonly type = 'speed-told';
  constructor(readonly speed: number | undefined) {
    super(SpeedToldEvent.type, { bubbles: true, composed: true });
  }
}

/** Asks for the shaft speed of a trial, with what the recording suggests. */
@customElement('trial-speed')
export class TrialSpeed extends LitElement {
  static override styles = [
    shared,
    css`
      .suggestions {
        align-items: end;
        gap: var(--gap) var(--gap-large);
      }
      .guess {
        flex: 1 1 20rem;
      }
      .guess p {
        margin-bottom: 0.375rem;
      }
    `,
  ];

  /** rad/s, where it is known. */
  @property({ type: Number }) speed: number | undefined;
  /** rad/s */
  @property({ type: Number }) wantedSpeed = 0;
  @property() units: Units = 'metric';
  @property({ attribute: false }) analysis: TrialAnalysis | undefined;
  @property({ type: Boolean }) simulated = false;

  protected override render() {
    const { speed, units, analysis } = this;
    return html`
      ${analysis ? html`<p>${speedSentence(analysis, this)}</p>` : nothing}
      <div class="row suggestions">
        <number-field
          label="Shaft speed in this trial"
          unit="rpm"
          .value=${speed === undefined ? undefined : toScreen(speed, 'speed', units)}
          .min=${1}
          .max=${200000}
          .decimals=${1}
          .step=${10}
          hint="From a tachometer, the speed controller’s log, or a guess."
          @value-changed=${this.onValue}
        ></number-field>
        ${analysis ? this.renderGuesses(analysis) : nothing}
      </div>
    `;
  }

  /** Once the speed is told, what the recording suggests folds away. */
  private renderGuesses(analysis: TrialAnalysis) {
    const suggestions = this.renderSuggestions(analysis);
    return this.speed === undefined
      ? html`<div class="guess">${suggestions}</div>`
      : html`<details class="guess">
          <summary>What the recording itself suggests</summary>
          ${suggestions}
        </details>`;
  }

  private renderSuggestions({ suggestions }: TrialAnalysis) {
    const wanted = { speed: this.wantedSpeed };
    if (suggestions.length === 0) {
      return html`<p class="aside">Nothing in the recording repeats clearly enough to tell the speed.</p>
        <div class="row">${this.renderChoice(wanted, 'wanted')}</div>`;
    }
    return html`<p class="aside">The recording suggests, with the chance that each is right:</p>
      <div class="row">
        ${suggestions.slice(0, 4).map((one) => this.renderChoice(one, `${Math.round(one.confidence * 100)} %`))}
        ${this.renderChoice(wanted, 'wanted')}
      </div>`;
  }

  private renderChoice({ speed }: Pick<SpeedSuggestion, 'speed'>, words: string) {
    const chosen = this.speed !== undefined && Math.abs(this.speed - speed) < 1e-6 * speed;
    return html`<button
      type="button"
      aria-pressed=${chosen ? 'true' : 'false'}
      @click=${() => {
        this.tell(speed);
      }}
    >
      ${formatFigure(speed, 'speed', this.units)} <span class="aside">${words}</span>
    </button>`;
  }

  private onValue(event: ValueChangedEvent): void {
    event.stopPropagation();
    if (Number.isNaN(event.value)) return;
    this.tell(event.value === undefined ? undefined : fromScreen(event.value, 'speed', this.units));
  }

  private tell(speed: number | undefined): void {
    this.dispatchEvent(new SpeedToldEvent(speed));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-speed': TrialSpeed;
  }
  interface HTMLElementEventMap {
    'speed-told': SpeedToldEvent;
  }
}
