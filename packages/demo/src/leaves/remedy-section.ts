import type { Remedy, ShaftLine } from '@sternline/core';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Units } from '../model/project.js';
import { say } from '../model/say.js';
import { shared } from '../styles/shared.js';
import { LineAddedEvent } from './advice-events.js';
import { adviceProgress } from './advice-progress.js';
import { AdviceTask } from './advice-task.js';
import { WantedSpeedEvent } from './leaf-events.js';
import { adoptWords, costWords, remediesSentence } from './remedy-words.js';
import { sectionStyles } from './section-styles.js';

/** Remedies shown before the rest folds away. */
const SHOWN = 5;

/** Changes to the open line, each worked out in full, ranked, to be adopted with one press. */
@customElement('remedy-section')
export class RemedySection extends LitElement {
  static override styles = [
    shared,
    sectionStyles,
    css`
      ol {
        margin: 0 0 var(--gap-large);
        padding: 0;
        list-style: none;
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(24rem, 100%), 1fr));
        gap: 1.25rem 2.5rem;
      }
      ol > li {
        max-width: none;
        border-left: 3px solid var(--line-thin);
        padding-left: 0.875rem;
        display: flex;
        flex-direction: column;
        align-items: start;
      }
      ol > li.least {
        border-left-color: var(--accent);
      }
      li button {
        margin-top: auto;
      }
      .flag {
        font-weight: 600;
        margin-bottom: 0.25rem;
      }
      .flag::before {
        content: '★ ';
      }
    `,
  ];

  @property({ attribute: false }) line!: ShaftLine;
  /** rad/s */
  @property({ type: Number }) wantedSpeed = 0;
  @property() units: Units = 'metric';

  private readonly task = new AdviceTask(this, 'remedies');

  protected override render() {
    const { line, wantedSpeed: speed } = this;
    const state = this.task.of([line, speed], () => ({ line, options: { speed } }));
    return html`<section aria-labelledby="remedies">
      <h2 id="remedies">What would change it most?</h2>
      <p class="aside">For “${line.name}”, the open layout.</p>
      ${adviceProgress(state, this.task, 'Trying changes, singly and in pairs')}
      ${
        state.answer
          ? html`<div class=${state.kind === 'done' ? '' : 'stale'}>
              ${this.renderRemedies(state.answer, state.kind === 'done')}
            </div>`
          : nothing
      }
    </section>`;
  }

  private renderRemedies(remedies: readonly Remedy[], settled: boolean) {
    const helping = remedies.filter(({ helps }) => helps);
    const first = helping.filter((remedy, index) => index < SHOWN || remedy.least);
    const rest = helping.filter((remedy) => !first.includes(remedy));
    const idle = remedies.filter(({ helps }) => !helps);
    return html`
      <p class="sentence" aria-live="polite">${remediesSentence(remedies, this.wantedSpeed, this.units)}</p>
      <ol>
        ${first.map((remedy) => this.renderRemedy(remedy, settled))}
      </ol>
      ${
        rest.length > 0
          ? html`<details>
              <summary>${rest.length} more that help</summary>
              <ol>
                ${rest.map((remedy) => this.renderRemedy(remedy, settled))}
              </ol>
            </details>`
          : nothing
      }
      ${idle.length > 0 ? this.renderIdle(idle) : nothing}
      <p class="hint">
        Work: 1 is minutes on the bench, 5 the tube out of the hull. Money: 1 is next to nothing, 5 the most.
        A pair adds its two. Each change was assessed in full and makes nothing unsafe elsewhere.
      </p>
    `;
  }

  /** What was found for an earlier line can be read on, but no longer adopted. */
  private renderRemedy(remedy: Remedy, settled: boolean) {
    const { units } = this;
    const { takes, scale } = costWords(remedy, units);
    const title = say(remedy.heading, units);
    return html`<li class=${remedy.least ? 'least' : ''}>
      <h3>${title}</h3>
      ${remedy.least ? html`<p class="flag">The least work that leaves it clear</p>` : nothing}
      <p>${say(remedy.summary, units)}</p>
      <p>${takes} <span class="aside">${scale}</span></p>
      <p><strong>What comes next:</strong> ${say(remedy.next, units)}</p>
      <button
        type="button"
        class=${remedy.least ? 'main' : ''}
        ?disabled=${!settled}
        aria-label=${`${adoptWords(remedy, units)}: ${title}`}
        @click=${() => {
          this.adopt(remedy);
        }}
      >
        ${adoptWords(remedy, units)}
      </button>
    </li>`;
  }

  private renderIdle(idle: readonly Remedy[]) {
    return html`<details>
      <summary>Why not something else? ${idle.length} that do not help</summary>
      <ul>
        ${idle.map(
          ({ heading, whyNot }) =>
            html`<li>
              <strong>${say(heading, this.units)}.</strong> ${whyNot ? say(whyNot, this.units) : nothing}
            </li>`,
        )}
      </ul>
    </details>`;
  }

  private adopt({ kinds, line, speed }: Remedy): void {
    this.dispatchEvent(
      kinds.includes('speed') ? new WantedSpeedEvent(speed, 'settled') : new LineAddedEvent(line),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'remedy-section': RemedySection;
  }
}
