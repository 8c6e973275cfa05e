import { jointAngles, type Assessment, type LineCriticalSpeed, type ShaftLine } from '@sternline/core';
import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../charts/line-drawing.js';
import type { Units } from '../model/project.js';
import { formatFigure, screenUnit } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { drawnMode } from './drawn-mode.js';
import './title-block.js';

/** The fixture at the head: the line to scale, with its title block. */
@customElement('line-sheet')
export class LineSheet extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr) 15rem;
        gap: 1rem;
        padding: 0.5rem 1rem;
        align-items: stretch;
        border-bottom: 1px solid var(--line-thin);
      }
      line-drawing {
        height: clamp(11rem, 28vh, 22rem);
      }
      @media (max-width: 62rem) {
        :host {
          grid-template-columns: minmax(0, 1fr);
          gap: 0;
          padding: 0;
        }
        title-block {
          grid-row: 1;
        }
      }
      @media (max-width: 40rem), (max-height: 40rem) {
        line-drawing {
          height: 10rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) assessment: Assessment | undefined;
  @property() chosenPart = '';
  /** The mode to draw on the line, if any. */
  @property({ attribute: false }) mode: LineCriticalSpeed | undefined;
  /** rad, how far the motor shaft is turned. */
  @property({ type: Number }) turn = 0;
  @property() units: Units = 'metric';
  /** What the project says of itself. */
  @property() note = '';
  /** Whether the figures are of an earlier state of the line. */
  @property({ type: Boolean }) stale = false;

  protected override render() {
    const { line, units, mode } = this;
    return html`<line-drawing
        .line=${line}
        .chosen=${this.chosenPart}
        .turn=${this.turn}
        .bows=${mode ? drawnMode(mode.shape) : []}
        .jointLabels=${jointAngles(line).map((angle) => formatFigure(angle, 'angle', units))}
        .barUnit=${screenUnit('length', units).holds}
        .barLabel=${(length: number) => formatFigure(length, 'length', units)}
      ></line-drawing>
      <title-block
        .name=${line.name}
        .assessment=${this.assessment}
        .units=${units}
        .note=${this.note}
        ?stale=${this.stale}
      ></title-block>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'line-sheet': LineSheet;
  }
}
