import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import type { LayoutTolerances } from '../model/layout-tolerances.js';
import type { Units } from '../model/project.js';
import { fromScreen, screenUnit, toScreen, type ScreenQuantity } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { TolerancesChangedEvent } from './advice-events.js';

const FIELDS = [
  { name: 'place', label: 'Lengths and places ±', quantity: 'length', hint: 'A ruler: half a millimetre.' },
  { name: 'diameter', label: 'Diameters ±', quantity: 'diameter', hint: 'Calipers: a hundredth.' },
  { name: 'angle', label: 'Angles ±', quantity: 'angle', hint: 'A phone’s level: half a degree.' },
] as const satisfies readonly {
  name: keyof LayoutTolerances;
  label: string;
  quantity: ScreenQuantity;
  hint: string;
}[];

/** How far the measures of all layouts may be off. */
@customElement('compare-spread')
export class CompareSpread extends LitElement {
  static override styles = [
    shared,
    css`
      .fields {
        display: flex;
        flex-wrap: wrap;
        gap: 0.75rem 1.5rem;
        margin-bottom: 0.75rem;
      }
    `,
  ];

  @property({ attribute: false }) tolerances!: LayoutTolerances;
  @property() units: Units = 'metric';

  protected override render() {
    return html`<details>
      <summary>How far the measures may be off</summary>
      <p class="hint">
        A difference smaller than what this spreads is said to be none. Put 0 for what is exact.
      </p>
      <div class="fields">
        ${FIELDS.map(({ name, label, quantity, hint }) => {
          const { symbol, decimals } = screenUnit(quantity, this.units);
          return html`<number-field
            label=${label}
            unit=${symbol}
            hint=${hint}
            .min=${0}
            .max=${toScreen(LARGEST[name], quantity, this.units)}
            terse
            .decimals=${decimals}
            .value=${toScreen(this.tolerances[name], quantity, this.units)}
            @value-changed=${({ value }: ValueChangedEvent) => {
              if (value === undefined || !(value >= 0)) return;
              const changed = { ...this.tolerances, [name]: fromScreen(value, quantity, this.units) };
              this.dispatchEvent(new TolerancesChangedEvent(changed));
            }}
          ></number-field>`;
        })}
      </div>
    </details>`;
  }
}

/** Beyond these hardly any draw is a line that can be built. */
const LARGEST: LayoutTolerances = { place: 0.005, diameter: 0.0005, angle: (5 * Math.PI) / 180 };

declare global {
  interface HTMLElementTagNameMap {
    'compare-spread': CompareSpread;
  }
}
