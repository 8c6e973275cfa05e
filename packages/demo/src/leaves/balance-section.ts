import { BALANCE_SAFETY, type ShaftLine } from '@sternline/core';
import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../charts/balance-propeller.js';
import type { NamedMass } from '../charts/balance-propeller.js';
import type { ChoiceChangedEvent, ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import {
  BALANCE_RUNS,
  EMPTY_BALANCE,
  TRIAL_RUNS,
  type BalanceBook,
  type BalanceRun,
  type LineAdvice,
} from '../model/advice.js';
import { walkBalance, type BalanceWalk } from '../model/balance-walk.js';
import type { Trial, Units } from '../model/project.js';
import { formatFigure, fromScreen, toScreen } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { AdviceChangedEvent } from './advice-events.js';
import './balance-result.js';
import './balance-run.js';
import type { RunReadEvent } from './balance-run.js';
import { renderSafety } from './balance-safety.js';
import './balance-sizes.js';
import type { BalanceSizedEvent } from './balance-sizes.js';
import { balanceStyles } from './balance-styles.js';
import { balanceSentence, massSafety, placeWords, verificationSentence } from './balance-words.js';
import { sectionStyles } from './section-styles.js';

const STEPS: readonly BalanceWalk['next'][] = ['mass', ...BALANCE_RUNS, 'done'];

/** Balancing the propeller without a phase reference, run by run, from the trial mass to the check. */
@customElement('balance-section')
export class BalanceSection extends LitElement {
  static override styles = [shared, sectionStyles, balanceStyles];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) advice: LineAdvice = {};
  /** Of this line. */
  @property({ attribute: false }) trials: readonly Trial[] = [];
  /** rad/s */
  @property({ type: Number }) wantedSpeed = 0;
  @property() units: Units = 'metric';

  private get book(): BalanceBook {
    return this.advice.balance ?? EMPTY_BALANCE;
  }

  private get diameter(): number {
    return this.line.propeller?.diameter ?? 0.04;
  }

  protected override render() {
    const { book, line, units } = this;
    const walk = walkBalance(book, line, this.wantedSpeed);
    return html`<section aria-labelledby="balance">
      <h2 id="balance">Balance the propeller</h2>
      <p class=${walk.problem ? 'sentence problem' : 'sentence'} aria-live="polite">
        ${balanceSentence(walk, book, units)}
      </p>
      <details ?open=${this.advice.balance !== undefined}>
        <summary>The runs, step by step</summary>
        <ol>
          ${this.renderMass(walk)} ${this.renderFound(walk)}
          ${TRIAL_RUNS.map((run, index) => this.renderTrial(walk, run, index))} ${this.renderResult(walk)}
          ${this.renderCheck(walk)}
        </ol>
        <button
          type="button"
          ?disabled=${this.advice.balance === undefined}
          @click=${() => {
            this.change(undefined);
          }}
        >
          Clear this balancing
        </button>
      </details>
    </section>`;
  }

  private renderMass(walk: BalanceWalk) {
    return this.renderStep(
      '1. Make a trial mass',
      { step: 'mass', walk },
      html`<balance-sizes
        .book=${this.book}
        .walk=${walk}
        units=${this.units}
        @balance-sized=${(event: BalanceSizedEvent) => {
          event.stopPropagation();
          this.change(event.book);
        }}
      ></balance-sizes>`,
    );
  }

  private renderFound(walk: BalanceWalk) {
    return this.renderStep(
      '2. Run it as it is',
      { step: 'found', walk },
      html`
        ${renderSafety('Before the battery goes in, every time', BALANCE_SAFETY)}
        <p>
          Nothing on the propeller yet. Run at ${formatFigure(walk.speed, 'speed', this.units)}, read the
          first order, stop.
        </p>
        ${this.renderReading('found', 'Amplitude as found', walk)}
      `,
    );
  }

  private renderTrial(walk: BalanceWalk, run: (typeof TRIAL_RUNS)[number], index: number) {
    const { book, units } = this;
    const angle = book.angles[index] ?? 0;
    const place = placeWords(angle);
    const mass = book.mass ?? walk.advised.mass;
    const masses: NamedMass[] = [{ mass, angle, name: formatFigure(mass, 'mass', units), kind: 'trial' }];
    return this.renderStep(
      `${index + 3}. The trial mass at ${place}`,
      { step: run, walk },
      html`
        <div class="side">
          ${this.renderPropeller(walk, masses, `The propeller from astern, the trial mass at ${place} clockwise from blade 1`)}
          <div>
            ${renderSafety('Before this run', massSafety())}
            <div class="fields">
              <number-field
                label=${`Place of the mass in run ${index + 2}`}
                unit="°"
                .min=${0}
                .max=${360}
                terse
                .decimals=${1}
                .step=${5}
                .value=${toScreen(angle, 'angle', units)}
                hint="Clockwise from blade 1, seen from astern."
                @value-changed=${(event: ValueChangedEvent) => {
                  this.takeAngle(index, event);
                }}
              ></number-field>
            </div>
            ${this.renderReading(run, `Amplitude with the mass at ${place}`, walk)}
          </div>
        </div>
      `,
    );
  }

  private renderResult(walk: BalanceWalk) {
    const { result, blades, radius } = walk;
    if (!result) return nothing;
    return this.renderStep(
      '6. The correction',
      { step: 'third', walk },
      html`<balance-result
        .result=${result}
        .book=${this.book}
        .blades=${blades}
        .diameter=${this.diameter}
        .radius=${radius}
        units=${this.units}
        @choice-changed=${(event: ChoiceChangedEvent) => {
          this.change({ ...this.book, by: event.choice === 'removing' ? 'removing' : 'adding' });
        }}
      ></balance-result>`,
    );
  }

  private renderCheck(walk: BalanceWalk) {
    if (!walk.result) return nothing;
    const { verification } = walk;
    return this.renderStep(
      '7. Run once more to check',
      { step: 'check', walk },
      html`
        ${renderSafety('Before this run', massSafety())}
        <p>Trial mass off, correction on, the same speed.</p>
        ${this.renderReading('check', 'Amplitude with the correction', walk)}
        ${verification ? html`<p role="status"><strong>${verificationSentence(verification)}</strong></p>` : nothing}
      `,
    );
  }

  /** A step that is not reached yet shows its title alone. */
  private renderStep(
    title: string,
    { step, walk }: { readonly step: BalanceWalk['next']; readonly walk: Pick<BalanceWalk, 'next'> },
    content: unknown,
  ) {
    const entered = step !== 'mass' && step !== 'done' && this.book.runs[step] !== undefined;
    const reached = entered || STEPS.indexOf(step) <= STEPS.indexOf(walk.next);
    const now = step === walk.next;
    return html`<li class=${now ? 'step now' : 'step'} aria-current=${now ? 'step' : nothing}>
      <h3>${title}</h3>
      ${reached ? content : nothing}
    </li>`;
  }

  private renderPropeller(
    { blades, radius }: Pick<BalanceWalk, 'blades' | 'radius'>,
    masses: readonly NamedMass[],
    label: string,
  ) {
    const largest = Math.max(this.book.mass ?? 0, ...masses.map(({ mass }) => mass));
    return html`<balance-propeller
      .blades=${blades}
      .diameter=${this.diameter}
      .radius=${radius}
      .masses=${masses}
      .largest=${largest}
      label=${label}
    ></balance-propeller>`;
  }

  private renderReading(run: BalanceRun, label: string, { speed }: BalanceWalk) {
    const { book } = this;
    return html`<balance-run
      .run=${run}
      label=${label}
      .reading=${book.runs[run]}
      .trials=${this.trials}
      .speed=${speed}
      channel=${book.channel ?? ''}
      unit=${book.unit ?? ''}
      units=${this.units}
      @run-read=${this.onRead}
    ></balance-run>`;
  }

  private onRead(event: RunReadEvent): void {
    event.stopPropagation();
    const { run, reading, from } = event;
    const { [run]: _, ...others } = this.book.runs;
    const source = from ? { channel: from.channel, unit: from.unit } : {};
    this.change({ ...this.book, ...source, runs: reading ? { ...others, [run]: reading } : others });
  }

  private takeAngle(index: number, { value }: ValueChangedEvent): void {
    if (value === undefined || Number.isNaN(value)) return;
    const [first, second, third] = this.book.angles.map((angle, place) =>
      place === index ? fromScreen(value, 'angle', this.units) : angle,
    ) as [number, number, number];
    this.change({ ...this.book, angles: [first, second, third] });
  }

  private change(balance: BalanceBook | undefined): void {
    const { balance: _, ...others } = this.advice;
    this.dispatchEvent(new AdviceChangedEvent(balance ? { ...others, balance } : others));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'balance-section': BalanceSection;
  }
}
