import type { Assessment } from '@sternline/core';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { VERDICT_SIGNS, verdictName } from './verdict-words.js';

/** The corner of the sheet: what is drawn, and what it comes to at the wanted speed. */
@customElement('title-block')
export class TitleBlock extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
        overflow: auto;
        border: 1.5px solid var(--ink);
        outline: 1px solid var(--line-thin);
        outline-offset: 3px;
        background: var(--sheet);
        margin: 4px;
      }
      dl {
        margin: 0;
        display: grid;
        grid-template-columns: 1fr 1fr;
      }
      dl > div {
        padding: 0.375rem 0.625rem;
        border-bottom: 1px solid var(--line-thin);
        min-width: 0;
      }
      dl > div.wide {
        grid-column: 1 / -1;
      }
      dt {
        font-size: 0.6875rem;
        letter-spacing: 0.04em;
        color: var(--ink-soft);
      }
      dd {
        margin: 0;
        font-weight: 500;
        overflow-wrap: anywhere;
      }
      .stamp {
        font-size: var(--text-large);
        font-weight: 600;
      }
      .inside .stamp {
        color: var(--warn);
      }
      .note {
        padding: 0.375rem 0.625rem;
        margin: 0;
        line-height: 1.3;
      }
      @media (max-width: 62rem) {
        :host {
          border-width: 0 0 1px;
          outline: 0;
          margin: 0;
          background: none;
        }
        dl {
          display: flex;
          align-items: baseline;
          gap: 0.75rem;
        }
        dl > div {
          border: 0;
          padding: 0.125rem 0.5rem;
        }
        dl > div.optional,
        .note {
          display: none;
        }
        dt {
          display: inline;
        }
        dd {
          display: inline;
        }
        .stamp {
          font-size: var(--text);
        }
      }
    `,
  ];

  @property() name = '';
  @property({ attribute: false }) assessment: Assessment | undefined;
  @property() units: Units = 'metric';
  /** What the project says of itself. */
  @property() note = '';
  @property({ type: Boolean }) stale = false;

  protected override render() {
    const { assessment } = this;
    return html`<dl class=${assessment?.verdict ?? ''}>
        <div class="wide optional">
          <dt>layout</dt>
          <dd>${this.name}</dd>
        </div>
        ${assessment ? this.renderVerdict(assessment) : nothing}
      </dl>
      ${this.note ? html`<p class="hint note">${this.note}</p>` : nothing}`;
  }

  private renderVerdict(assessment: Assessment) {
    const { verdict, speed, speedLimit } = assessment;
    const { units } = this;
    return html`<div class="wide">
        <dt>at ${formatFigure(speed, 'speed', units)}${this.stale ? ', before the last edit' : ''}</dt>
        <dd class="stamp" aria-live="polite">
          <span aria-hidden="true">${VERDICT_SIGNS[verdict]}</span> ${verdictName(assessment)}
        </dd>
      </div>
      <div class="wide">
        <dt>speed limit</dt>
        <dd>${formatFigure(speedLimit.speed, 'speed', units)}</dd>
      </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'title-block': TitleBlock;
  }
}
