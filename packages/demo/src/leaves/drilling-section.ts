import type { LineAxes } from '@sternline/core';
import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../elements/data-table.js';
import type { ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import { drillingMarks } from '../model/drilling-marks.js';
import { measuredAxes } from '../model/measured-axes.js';
import type { DrillingPlan, HullStation, LineMeasures } from '../model/measures.js';
import type { Units } from '../model/project.js';
import { fromScreen, screenUnit, toScreen, type ScreenQuantity } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { drillingSentence, drillingTable } from './drilling-words.js';
import { MeasuresChangedEvent } from './leaf-events.js';
import { QuietValue } from './quiet-value.js';
import { sectionStyles } from './section-styles.js';

const EMPTY: DrillingPlan = { bulkheads: [] };

/** Where the tube goes through bulkheads and hull: centre marks and the size of the holes. */
@customElement('drilling-section')
export class DrillingSection extends LitElement {
  static override styles = [shared, sectionStyles];

  @property({ attribute: false }) measures: LineMeasures = {};
  /** At how many joints the line bends. */
  @property({ type: Number }) bends = 1;
  @property() units: Units = 'metric';

  private readonly axes = new QuietValue(this, axesOf);

  protected override render() {
    const { units } = this;
    const plan = this.measures.drilling ?? EMPTY;
    const axes = this.axes.of(this.measures.points, this.bends);
    const marks = axes ? drillingMarks(axes.tube, plan) : [];
    return html`<section aria-labelledby="drilling">
      <h2 id="drilling">Where does the tube go through?</h2>
      <p class="sentence" aria-live="polite">
        ${drillingSentence({ axis: axes !== undefined, bends: this.bends, plan, marks }, units)}
      </p>
      ${axes?.assumed.some(({ code }) => code.includes('offsets')) ? html`<p>Offsets were not measured: the marks stand on the centre line until they are.</p>` : nothing}
      ${marks.length > 0 ? html`<data-table .table=${drillingTable(marks, units)}></data-table>` : nothing}
      <details>
        <summary>Tube, bulkheads and hull</summary>
        ${this.renderFields(plan)}
      </details>
    </section>`;
  }

  private renderFields(plan: DrillingPlan) {
    return html`<fieldset>
        <legend>Stern tube and bulkheads</legend>
        <div class="fields">
          ${this.renderNumber('Outside diameter of the tube', {
            value: plan.tubeDiameter,
            quantity: 'diameter',
            hint: 'Calipers; add what the glue needs, about 0.2 mm.',
            take: (value) => {
              this.change({
                ...withoutKey(plan, 'tubeDiameter'),
                ...(value === undefined ? {} : { tubeDiameter: value }),
              });
            },
          })}
          ${plan.bulkheads.map((at, index) =>
            this.renderNumber(`Bulkhead ${index + 1}, aft of the datum`, {
              value: at,
              quantity: 'length',
              hint: 'To its near face; it is taken as square to the keel. Empty it to remove the bulkhead.',
              take: (value) => {
                this.change({ ...plan, bulkheads: replaced(plan.bulkheads, index, value) });
              },
            }),
          )}
        </div>
        <button
          type="button"
          @click=${() => {
            this.change({ ...plan, bulkheads: [...plan.bulkheads, (plan.bulkheads.at(-1) ?? 0.1) + 0.05] });
          }}
        >
          Add a bulkhead
        </button>
      </fieldset>
      ${this.renderHull(plan)}`;
  }

  private renderHull(plan: DrillingPlan) {
    const hull = plan.hull ?? {};
    const field = (
      key: keyof HullStation,
      label: string,
      { quantity, hint }: { quantity: ScreenQuantity; hint: string },
    ) =>
      this.renderNumber(label, {
        value: hull[key],
        quantity,
        hint,
        take: (value) => {
          this.change({
            ...plan,
            hull: { ...withoutKey(hull, key), ...(value === undefined ? {} : { [key]: value }) },
          });
        },
      });
    return html`<fieldset>
      <legend>Hull’s bottom where the tube leaves it</legend>
      <div class="fields">
        ${field('at', 'Aft of the datum', { quantity: 'length', hint: 'Near where the tube comes out.' })}
        ${field('height', 'Height there', { quantity: 'length', hint: 'Of the bottom above the keel line, in the plane of the shaft.' })}
        ${field('riseAft', 'Rise going aft', { quantity: 'angle', hint: 'Bevel gauge or phone level along the bottom; rising aft is positive.' })}
        ${field('riseToPort', 'Rise to port', { quantity: 'angle', hint: 'The same across the bottom; rising to port is positive.' })}
      </div>
    </fieldset>`;
  }

  private renderNumber(label: string, { value, quantity, hint, take }: NumberTask) {
    const { symbol, decimals } = screenUnit(quantity, this.units);
    return html`<number-field
      label=${label}
      hint=${hint}
      unit=${symbol}
      .decimals=${decimals}
      .value=${value === undefined ? undefined : toScreen(value, quantity, this.units)}
      @value-changed=${(event: ValueChangedEvent) => {
        if (Number.isNaN(event.value)) return;
        take(event.value === undefined ? undefined : fromScreen(event.value, quantity, this.units));
      }}
    ></number-field>`;
  }

  private change(drilling: DrillingPlan): void {
    this.dispatchEvent(new MeasuresChangedEvent({ ...this.measures, drilling }));
  }
}

interface NumberTask {
  /** SI */
  readonly value: number | undefined;
  readonly quantity: ScreenQuantity;
  readonly hint: string;
  readonly take: (value: number | undefined) => void;
}

function axesOf(points: LineMeasures['points'], bends: number): LineAxes | undefined {
  const outcome = points && (bends === 1 || bends === 2) ? measuredAxes(points, bends) : undefined;
  return outcome?.kind === 'axes' ? outcome.axes : undefined;
}

function replaced(list: readonly number[], index: number, value: number | undefined): number[] {
  return list.flatMap((old, place) => (place !== index ? [old] : value === undefined ? [] : [value]));
}

function withoutKey<Item extends object, Key extends keyof Item>(item: Item, key: Key): Omit<Item, Key> {
  const { [key]: _, ...others } = item;
  return others;
}

declare global {
  interface HTMLElementTagNameMap {
    'drilling-section': DrillingSection;
  }
}
