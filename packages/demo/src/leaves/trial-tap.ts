import { css, html, LitElement, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Trial } from '../model/project.js';
import { tapSentences } from '../model/tap-words.js';
import type { TapOutcome } from '../model/tap-words.js';
import { shared } from '../styles/shared.js';

/** Reads the ringing of a trial that was tapped. */
export type ReadTaps = (trial: Trial) => Promise<TapOutcome>;

/** A tap test: how it is done, what rang, and the prediction beside it. */
@customElement('trial-tap')
export class TrialTap extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
    `,
  ];

  @property({ attribute: false }) trial: Trial | undefined;
  @property({ attribute: false }) read: ReadTaps | undefined;
  @state() private outcome: TapOutcome | undefined;
  @state() private working = false;

  protected override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('trial');
    const same = before && before.recording === this.trial?.recording && before.part === this.trial.part;
    if (changed.has('trial') && !same) this.outcome = undefined;
  }

  protected override render() {
    return html`<details>
      <summary>It was a tap test, with the motor still</summary>
      <p class="aside">
        Battery disconnected, strike the tube or the shaft at mid-length with a small hard thing, five times,
        two seconds apart, and record that. What rings, and how fast it dies away, tells how stiffly the line
        is held.
      </p>
      <button type="button" ?disabled=${this.working} @click=${() => void this.listen()}>
        Read its ringing
      </button>
      <div role="status">
        ${this.outcome ? tapSentences(this.outcome).map((sentence) => html`<p>${sentence}</p>`) : ''}
      </div>
    </details>`;
  }

  private async listen(): Promise<void> {
    const { trial, read } = this;
    if (!trial || !read) return;
    this.working = true;
    try {
      const outcome = await read(trial);
      if (this.trial === trial) this.outcome = outcome;
    } catch {
      // Cancelled with the rest of the work; the button is there to ask again.
      this.outcome = undefined;
    } finally {
      this.working = false;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-tap': TrialTap;
  }
}
