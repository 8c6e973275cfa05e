import { noLoadSpeed, type Assessment, type ShaftLine } from '@sternline/core';
import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { SpeedMovedEvent } from '../charts/chart-events.js';
import '../charts/speed-ruler.js';
import type { OrderLevel, ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import { rulerTop } from '../model/judge-line.js';
import type { Units } from '../model/project.js';
import { throttleAt } from '../model/running.js';
import { formatFigure, fromScreen, toScreen, writeNumber } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { WantedSpeedEvent } from './leaf-events.js';
import { limitLabel, rulerBands, rulerLevels } from './ruler-input.js';
import { throttleWords } from './running-words.js';

/** The fixture at the foot: the wanted speed as a number and as a mark on the ruler. */
@customElement('speed-bench')
export class SpeedBench extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: grid;
        grid-template-columns: 11rem minmax(0, 1fr);
        gap: 0 1rem;
        padding: 0.375rem 1rem 0.25rem;
        border-top: 1.5px solid var(--ink);
        align-items: start;
      }
      speed-ruler {
        height: 7.25rem;
      }
      @media (max-width: 62rem) {
        :host {
          grid-template-columns: minmax(0, 1fr);
          padding: 0.25rem 0.5rem;
        }
        number-field {
          --field-direction: row;
          --field-wrap: wrap;
          --field-align: center;
          --field-hint: none;
          column-gap: 0.75rem;
        }
      }
      @media (max-width: 40rem) {
        speed-ruler {
          height: 5.5rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) assessment: Assessment | undefined;
  @property({ attribute: false }) levels: readonly OrderLevel[] = [];
  /** rad/s */
  @property({ type: Number }) wantedSpeed = 0;
  /** rad/s, the wanted speed before a hand began to move it: the axis stays still meanwhile. */
  @property({ type: Number }) settledSpeed = 0;
  @property() units: Units = 'metric';

  protected override render() {
    const { assessment, units } = this;
    const wanted = toScreen(this.wantedSpeed, 'speed', units);
    return html`<number-field
        label="Wanted shaft speed"
        unit="rpm"
        hint=${this.reachWords()}
        terse
        .value=${Math.round(wanted)}
        .decimals=${0}
        .min=${50}
        .max=${60_000}
        .step=${50}
        @value-changed=${this.onTyped}
      ></number-field>
      <speed-ruler
        .bands=${assessment ? rulerBands(this.line, assessment, units) : []}
        .levels=${rulerLevels(this.levels, units)}
        .wanted=${wanted}
        .wantedNote=${this.throttleNote()}
        .limit=${toScreen(assessment?.speedLimit.speed ?? Infinity, 'speed', units)}
        .limitLabel=${assessment ? limitLabel(assessment, units) : ''}
        .top=${toScreen(rulerTop(this.line, this.settledSpeed), 'speed', units)}
        .write=${writeSpeed}
        @speed-move=${this.onMoved}
      ></speed-ruler>`;
  }

  private reachWords(): string {
    const unloaded = noLoadSpeed(this.line);
    if (unloaded === undefined) return '';
    const note = this.throttleNote();
    if (note) return `${note.charAt(0).toUpperCase()}${note.slice(1)} under load.`;
    return `Unloaded, the motor turns ${formatFigure(unloaded, 'speed', this.units)}.`;
  }

  private throttleNote(): string {
    const { line, wantedSpeed } = this;
    if (!line.motor || !line.supply || !line.propeller) return '';
    const throttle = throttleAt(line, wantedSpeed);
    return throttle === undefined ? 'beyond full throttle' : `${throttleWords(throttle)} throttle`;
  }

  private onTyped(event: ValueChangedEvent): void {
    const speed = fromScreen(event.value ?? NaN, 'speed', this.units);
    if (speed > 0) this.dispatchEvent(new WantedSpeedEvent(speed, 'settled'));
  }

  private onMoved(event: SpeedMovedEvent): void {
    this.dispatchEvent(new WantedSpeedEvent(fromScreen(event.speed, 'speed', this.units), event.phase));
  }
}

function writeSpeed(speed: number): string {
  return writeNumber(speed, 'speed');
}

declare global {
  interface HTMLElementTagNameMap {
    'speed-bench': SpeedBench;
  }
}
