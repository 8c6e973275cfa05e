import {
  outputAngle,
  speedFluctuation,
  speedRatio,
  type Assessment,
  type ShaftLine,
  type SpeedFluctuation,
} from '@sternline/core';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../charts/turn-chart.js';
import '../charts/yoke-chart.js';
import '../elements/chart-frame.js';
import '../elements/data-table.js';
import type { TableData } from '../elements/data-table.js';
import type { ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import type { LineMeasures } from '../model/measures.js';
import type { Units } from '../model/project.js';
import { jointChatters, USUAL_FRICTION, yokeLine } from '../model/turning.js';
import { formatFigure, fromScreen, screenUnit, toScreen } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { accelerationSentence, accelerationTable, jointsSentence, jointTable } from './joint-words.js';
import { MeasuresChangedEvent } from './leaf-events.js';
import './phase-section.js';
import { sectionStyles } from './section-styles.js';
import { turningSentence } from './turning-words.js';

/** Steps of the curve over one turn: one for each degree. */
const STEPS = 360;

/** A share smaller than this would be written as none. */
const LEAST_SWING = 5e-6;

/** How unevenly the propeller turns while the motor turns evenly. */
@customElement('turning-leaf')
export class TurningLeaf extends LitElement {
  static override styles = [
    shared,
    sectionStyles,
    css`
      .turn {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(12rem, 24rem);
        gap: 0 1.5rem;
        align-items: start;
      }
      .turn figure {
        margin: 0;
      }
      figcaption {
        font-weight: 600;
        margin-bottom: 0.25rem;
      }
      @media (max-width: 56rem) {
        .turn {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @property({ attribute: false }) line!: ShaftLine;
  @property() units: Units = 'metric';
  @property({ type: Boolean }) stale = false;
  /** rad, angle of the motor shaft that is read out. */
  @property({ type: Number }) turn = 0;
  /** rad/s, the wanted speed. */
  @property({ type: Number }) speed = 0;
  @property({ attribute: false }) measures: LineMeasures = {};
  @property({ attribute: false }) assessment: Assessment | undefined;

  protected override render() {
    const { line, units } = this;
    const fluctuation = speedFluctuation(line);
    const turning = line.joints.some(({ kind }) => kind === 'universal');
    return html`<div class=${this.stale ? 'stale' : ''}>
      <h2>Does the propeller turn evenly?</h2>
      <p class="sentence">${turningSentence(line, { fluctuation, units })}</p>
      ${turning ? this.renderTurn() : nothing}
      ${fluctuation.degree > LEAST_SWING ? html`<data-table .table=${orderTable(fluctuation, units)}></data-table>` : nothing}
      ${
        turning
          ? html`<phase-section .line=${line} .measures=${this.measures} .units=${units}></phase-section>
              ${this.renderJoints()}`
          : nothing
      }
    </div>`;
  }

  private renderTurn() {
    const { line } = this;
    const angles = Float64Array.from({ length: STEPS + 1 }, (_, step) => (2 * Math.PI * step) / STEPS);
    const ratio = speedRatio(line, angles);
    const names = line.joints.map((_, joint) =>
      line.joints.length > 1 ? `joint ${joint + 1}` : 'the joint',
    );
    return html`<div class="turn">
      <chart-frame
        label="Speed of the propeller over speed of the motor, through one turn"
        file="turn"
        .table=${turnTable(angles, ratio)}
      >
        <turn-chart .values=${ratio} .write=${(value: number) => value.toFixed(3)}></turn-chart>
      </chart-frame>
      <chart-frame
        label="Yokes at that angle, looking aft along each driving shaft"
        file="yokes"
        .table=${leadTable(line)}
      >
        <yoke-chart .line=${yokeLine(line)} .turn=${this.turn} .names=${names}></yoke-chart>
      </chart-frame>
    </div>`;
  }

  private renderJoints() {
    const { line, speed, units } = this;
    const friction = this.measures.friction ?? USUAL_FRICTION;
    const chatters = jointChatters(line, { speed, friction });
    const loads = this.assessment?.loads?.joints ?? [];
    const rattling = loads.filter(({ rattles }) => rattles).map(({ joint }) => joint);
    return html`<section aria-labelledby="joints">
      <h2 id="joints">What do the joints bear?</h2>
      <p class="sentence">${jointsSentence(line, { speed, chatters, rattling }, units)}</p>
      <data-table .table=${jointTable(line, { speed, chatters }, units)}></data-table>
      ${this.renderFriction()}
      <p class="sentence">${accelerationSentence(line, speed, units)}</p>
      <data-table .table=${accelerationTable(line, speed, units)}></data-table>
      <p class="hint">
        The motor is taken as turning evenly; a light rotor gives way and takes some of the swing. The limit
        of speed times angle is advice of makers of joints with plain pins.
      </p>
    </section>`;
  }

  private renderFriction() {
    const { symbol, decimals } = screenUnit('torque', this.units);
    const { friction } = this.measures;
    const usual = formatFigure(USUAL_FRICTION, 'torque', this.units);
    return html`<div class="fields">
      <number-field
        label="Friction of bushes and seal"
        unit=${symbol}
        hint=${`Battery off: a thread round the propeller’s hub, pulled by a letter scale until it turns; pull times radius. Empty: ${usual}, a guess.`}
        .decimals=${decimals}
        .min=${0}
        terse
        .value=${friction === undefined ? undefined : toScreen(friction, 'torque', this.units)}
        @value-changed=${(event: ValueChangedEvent) => {
          this.takeFriction(event.value);
        }}
      ></number-field>
    </div>`;
  }

  private takeFriction(value: number | undefined): void {
    if (Number.isNaN(value)) return;
    const { friction: _, ...others } = this.measures;
    const next =
      value === undefined || value === 0
        ? others
        : { ...others, friction: fromScreen(value, 'torque', this.units) };
    this.dispatchEvent(new MeasuresChangedEvent(next));
  }
}

function turnTable(angles: Float64Array, ratio: Float64Array): TableData {
  return {
    caption: 'Speed ratio through one turn',
    columns: ['Motor angle, °', 'Propeller speed over motor speed'],
    rows: Array.from({ length: 73 }, (_, step) => [
      ((angles[step * 5] ?? 0) * (180 / Math.PI)).toFixed(0),
      (ratio[step * 5] ?? 1).toFixed(5),
    ]),
  };
}

function leadTable(line: ShaftLine): TableData {
  const angles = Float64Array.from({ length: 25 }, (_, step) => (Math.PI * step) / 12);
  const outputs = outputAngle(line, angles);
  const degrees = (angle: number, decimals: number) =>
    ((angle * 180) / Math.PI)
      .toFixed(decimals)
      .replace(/^-(?=.*[1-9])/, '−')
      .replace(/^-/, '');
  return {
    caption: 'How far the propeller has turned',
    columns: ['Motor angle, °', 'Propeller angle, °', 'Ahead of the motor, °'],
    rows: Array.from(angles, (angle, step) => [
      degrees(angle, 0),
      degrees(outputs[step] ?? angle, 2),
      degrees((outputs[step] ?? angle) - angle, 2),
    ]),
  };
}

function orderTable({ orders }: SpeedFluctuation, units: Units): TableData {
  return {
    caption: 'What the swing is made of',
    columns: ['Times a turn', 'Share of the speed'],
    rows: orders
      .filter(({ amplitude }) => amplitude > LEAST_SWING)
      .map(({ order, amplitude }) => [`${order}×`, `± ${formatFigure(amplitude, 'share', units)}`]),
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'turning-leaf': TurningLeaf;
  }
}
