import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import { EMPTY_BALANCE, type BalanceBook } from '../model/advice.js';
import type { BalanceWalk } from '../model/balance-walk.js';
import type { Units } from '../model/project.js';
import { fromScreen, screenUnit, toScreen, type ScreenQuantity } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { bandSentence, trialMassSentence } from './balance-words.js';
import { sectionStyles } from './section-styles.js';

/** A size of a balancing was given, or taken back. */
export class BalanceSizedEvent extends Event {
  static readonly type = 'balance-sized';
  constructor(readonly book: BalanceBook) {
    super(BalanceSizedEvent.type, { bubbles: true, composed: true });
  }
}

const FIELDS = [
  {
    name: 'speed',
    label: 'Speed of every run',
    hint: 'Below the first whirl, the same each time.',
    quantity: 'speed',
  },
  { name: 'rotorMass', label: 'Mass that turns', hint: 'Propeller and shaft.', quantity: 'mass' },
  {
    name: 'radius',
    label: 'Distance of the mass from the middle',
    hint: 'Where it can be held fast on every side.',
    quantity: 'length',
  },
  {
    name: 'mass',
    label: 'Trial mass, as weighed',
    hint: 'With the tape or glue that holds it.',
    quantity: 'mass',
  },
] as const satisfies readonly {
  name: keyof BalanceBook & keyof (BalanceBook & BalanceWalk);
  label: string;
  hint: string;
  quantity: ScreenQuantity;
}[];

/** How large the trial mass should be, and the sizes that this hangs on. */
@customElement('balance-sizes')
export class BalanceSizes extends LitElement {
  static override styles = [shared, sectionStyles];

  @property({ attribute: false }) book: BalanceBook = EMPTY_BALANCE;
  @property({ attribute: false }) walk!: BalanceWalk;
  @property() units: Units = 'metric';

  protected override render() {
    const { book, walk, units } = this;
    const values = { ...walk, mass: book.mass };
    return html`
      <p>${trialMassSentence(walk, book.mass, units)}</p>
      ${walk.band ? html`<p class="problem">${bandSentence(walk, units)}</p>` : nothing}
      <div class="fields">
        ${FIELDS.map(({ name, label, hint, quantity }) => {
          const { symbol, decimals } = screenUnit(quantity, units);
          const value = values[name];
          return html`<number-field
            label=${label}
            hint=${hint}
            unit=${symbol}
            .decimals=${quantity === 'mass' ? decimals + 1 : decimals}
            .value=${value === undefined ? undefined : toScreen(value, quantity, units)}
            @value-changed=${(event: ValueChangedEvent) => {
              this.take(name, event, quantity);
            }}
          ></number-field>`;
        })}
      </div>
      <p class="aside">
        Mark blade 1. Angles are counted clockwise from it, looking at the propeller from astern, whichever
        way it turns.
      </p>
    `;
  }

  private take(
    name: (typeof FIELDS)[number]['name'],
    { value }: ValueChangedEvent,
    quantity: ScreenQuantity,
  ): void {
    if (value !== undefined && !(value > 0)) return;
    const { [name]: _, ...others } = this.book;
    const book =
      value === undefined ? others : { ...others, [name]: fromScreen(value, quantity, this.units) };
    this.dispatchEvent(new BalanceSizedEvent(book));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'balance-sizes': BalanceSizes;
  }
  interface HTMLElementEventMap {
    'balance-sized': BalanceSizedEvent;
  }
}
