import type { ShaftLine } from '@sternline/core';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { LineAdvice } from '../model/advice.js';
import type { Trial, Units } from '../model/project.js';
import './balance-section.js';
import './calibrate-section.js';
import './ladder-section.js';

const NO_ADVICE: LineAdvice = {};

/** What trials lead to: what to try next, the line fitted to what was measured, the propeller balanced. */
@customElement('trials-advice')
export class TrialsAdvice extends LitElement {
  static override styles = css`
    :host {
      display: block;
      min-width: 0;
    }
  `;

  @property({ attribute: false }) line: ShaftLine | undefined;
  @property() lineId = '';
  @property({ attribute: false }) advice: LineAdvice | undefined;
  @property({ attribute: false }) trials: readonly Trial[] = [];
  /** rad/s */
  @property({ type: Number }) wantedSpeed = 0;
  @property() units: Units = 'metric';

  protected override render() {
    const { line, units, wantedSpeed } = this;
    if (!line) return nothing;
    const advice = this.advice ?? NO_ADVICE;
    const trials = this.trials.filter((trial) => trial.lineId === this.lineId);
    return html`
      <ladder-section .line=${line} .advice=${advice} .trials=${trials}></ladder-section>
      <calibrate-section
        .line=${line}
        .advice=${advice}
        .wantedSpeed=${wantedSpeed}
        units=${units}
      ></calibrate-section>
      <balance-section
        .line=${line}
        .advice=${advice}
        .trials=${trials}
        .wantedSpeed=${wantedSpeed}
        units=${units}
      ></balance-section>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trials-advice': TrialsAdvice;
  }
}
