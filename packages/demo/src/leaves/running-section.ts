import type { Assessment, ShaftLine } from '@sternline/core';
import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../elements/data-table.js';
import type { Units } from '../model/project.js';
import { runningOf, withDrivePart, type DrivePart, type Running } from '../model/running.js';
import { shared } from '../styles/shared.js';
import { LineEditedEvent } from './leaf-events.js';
import { runningSentence, runningTable, throttleTable } from './running-words.js';
import { sectionStyles } from './section-styles.js';

/** How fast motor and battery turn the shaft against the propeller, and the bands to avoid as throttle. */
@customElement('running-section')
export class RunningSection extends LitElement {
  static override styles = [shared, sectionStyles];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) assessment: Assessment | undefined;
  /** rad/s, the wanted speed. */
  @property({ type: Number }) speed = 0;
  @property() units: Units = 'metric';

  protected override render() {
    const { line, speed, units } = this;
    const running = runningOf(line, speed);
    return html`<section aria-labelledby="running">
      <h2 id="running">How fast does the motor turn it?</h2>
      <p class=${running.kind === 'problem' ? 'sentence problem' : 'sentence'}>
        ${runningSentence(running, speed, units)}
      </p>
      ${running.kind === 'missing' ? this.renderMissing(running.missing) : nothing}
      ${running.kind === 'runs' ? this.renderFigures(running) : nothing}
    </section>`;
  }

  private renderMissing(missing: readonly DrivePart[]) {
    const names = { motor: 'a motor', supply: 'a battery', propeller: 'a propeller' } as const;
    return html`<div class="row">
      ${missing.map(
        (part) =>
          html`<button
            type="button"
            @click=${() => {
              this.dispatchEvent(new LineEditedEvent(withDrivePart(this.line, part)));
            }}
          >
            Add ${names[part]} of a usual size
          </button>`,
      )}
      <span class="hint">Its figures can then be made your own among the parts.</span>
    </div>`;
  }

  private renderFigures({ full, wanted }: Extract<Running, { kind: 'runs' }>) {
    const { line, units, assessment } = this;
    const points = [
      ...(wanted ? [{ name: 'At the wanted speed', point: wanted }] : []),
      { name: 'At full throttle', point: full },
    ];
    const bands = assessment?.avoidBands ?? [];
    return html`<div class="tables">
        <data-table .table=${runningTable(points, units)}></data-table>
        ${bands.length > 0 ? html`<data-table .table=${throttleTable(line, bands, units)}></data-table>` : nothing}
      </div>
      <p class="hint">
        Estimates:
        ${
          full.propeller.source === 'series'
            ? 'the propeller’s torque is that of a published series of full-size propellers'
            : 'the propeller’s torque is that of the coefficient entered'
        },
        held at the quay, where it is largest; under way the shaft turns somewhat faster. The controller is
        taken as giving the motor its throttle’s share of the voltage; friction of bushes and seal is left
        out.
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'running-section': RunningSection;
  }
}
