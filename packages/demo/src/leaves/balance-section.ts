import { BALANCE_SAFETY, type ShaftLine } from '@sternline/core';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../charts/balance-circles.js';
import '../charts/balance-propeller.js';
import type { NamedMass } from '../charts/balance-propeller.js';
import '../elements/choice-field.js';
import type { ChoiceChangedEvent, ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import {
  EMPTY_BALANCE,
  TRIAL_RUNS,
  type BalanceBook,
  type BalanceRun,
  type LineAdvice,
} from '../model/advice.js';
import { walkBalance, type BalanceResult, type BalanceWalk } from '../model/balance-walk.js';
import type { Trial, Units } from '../model/project.js';
import { formatFigure, fromScreen, screenUnit, toScreen, type ScreenQuantity } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { AdviceChangedEvent } from './advice-events.js';
import './balance-run.js';
import type { RunReadEvent } from './balance-run.js';
import {
  balanceSentence,
  massSafety,
  splitSentence,
  trialMassSentence,
  verificationSentence,
} from './balance-words.js';
import { sectionStyles } from './section-styles.js';

const BY = [
  { value: 'adding', label: 'putting mass on' },
  { value: 'removing', label: 'taking mass off' },
];

/** Balancing the propeller without a phase reference, run by run, from the trial mass to the check. */
@customElement('balance-section')
export class BalanceSection extends LitElement {
  static override styles = [
    shared,
    sectionStyles,
    css`
      ol {
        list-style: none;
        margin: 0;
        padding: 0;
      }
      .step {
        max-width: none;
        border-left: 3px solid var(--line-thin);
        padding: 0 0 0.25rem 1rem;
        margin-bottom: var(--gap-large);
      }
      .step.now {
        border-left-color: var(--accent);
      }
      .side {
        display: grid;
        grid-template-columns: minmax(0, 13rem) minmax(0, 1fr);
        gap: 0.5rem 2rem;
        align-items: start;
      }
      .circles {
        max-width: 27rem;
      }
      .safety {
        border: 1px solid var(--warn);
        padding: 0.5rem 0.75rem;
        margin-bottom: 0.75rem;
        max-width: 74ch;
      }
      .safety p {
        font-weight: 600;
        margin-bottom: 0.25rem;
      }
      @media (max-width: 40rem) {
        .side {
          grid-template-columns: minmax(0, 1fr);
        }
        .step {
          padding-left: 0.625rem;
        }
      }
    `,
  ];

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
    const { book, units } = this;
    return this.renderStep(
      '1. Make a trial mass',
      walk.next === 'mass',
      html`
        <p>${trialMassSentence(walk, book.mass, units)}</p>
        <div class="fields">
          ${this.renderField('speed', 'Speed of every run', 'Below the first whirl, the same each time.', walk.speed, 'speed')}
          ${this.renderField('rotorMass', 'Mass that turns', 'Propeller and shaft.', walk.rotorMass, 'mass')}
          ${this.renderField('radius', 'Distance of the mass from the middle', 'Where it can be held fast on every side.', walk.radius, 'length')}
          ${this.renderField('mass', 'Trial mass, as weighed', 'With the tape or glue that holds it.', book.mass, 'mass')}
        </div>
        <p class="aside">
          Mark blade 1. Angles are counted clockwise from it, looking at the propeller from astern, whichever
          way it turns.
        </p>
      `,
    );
  }

  private renderFound(walk: BalanceWalk) {
    return this.renderStep(
      '2. Run it as it is',
      walk.next === 'found',
      html`
        ${safety('Before the battery goes in, every time', BALANCE_SAFETY)}
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
    const place = formatFigure(angle, 'angle', units);
    const mass = book.mass ?? walk.advised.mass;
    const masses: NamedMass[] = [{ mass, angle, name: formatFigure(mass, 'mass', units), kind: 'trial' }];
    return this.renderStep(
      `${index + 3}. The trial mass at ${place}`,
      walk.next === run,
      html`
        <div class="side">
          ${this.renderPropeller(walk, masses, `The propeller from astern, the trial mass at ${place} clockwise from blade 1`)}
          <div>
            ${safety('Before this run', massSafety())}
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

  private renderResult({ result, ...walk }: BalanceWalk) {
    if (!result) return nothing;
    const { book, units } = this;
    return this.renderStep(
      '6. The correction',
      false,
      html`
        <p>${splitSentence(result, book, { blades: walk.blades, units })}</p>
        ${result.balance.warnings.map(({ sentence }) => html`<p class="problem">${sentence}</p>`)}
        <div class="fields">
          <choice-field
            label="Correct by"
            .value=${book.by}
            .choices=${BY}
            @choice-changed=${(event: ChoiceChangedEvent) => {
              this.change({ ...book, by: event.choice === 'removing' ? 'removing' : 'adding' });
            }}
          ></choice-field>
        </div>
        <div class="side">
          ${this.renderPropeller(walk, this.partsOf(result), 'The propeller from astern with the correction on it')}
          <figure class="circles">
            ${this.renderCircles(result)}
            <figcaption class="aside">
              One circle for each run. Where the three dashed ones meet, the arrow points at the place of the
              correction; its length against the full circle gives the mass.
            </figcaption>
          </figure>
        </div>
      `,
    );
  }

  private partsOf({ split }: BalanceResult): NamedMass[] {
    const { book, units } = this;
    const sign = book.by === 'removing' ? '−' : '';
    return split.parts.map(({ mass, angle }) => ({
      ...{ mass, angle, kind: 'correction' as const },
      name: `${sign}${formatFigure(mass, 'mass', units)}`,
    }));
  }

  private renderCircles({ balance }: BalanceResult) {
    const { book, units } = this;
    const trials = TRIAL_RUNS.map((run, i) => ({
      angle: book.angles[i] ?? 0,
      amplitude: book.runs[run]?.amplitude ?? 0,
    }));
    const answer = `${formatFigure(balance.mass, 'mass', units)} at ${formatFigure(balance.angle, 'angle', units)}`;
    return html`<balance-circles
      .readings=${{
        initial: book.runs.found?.amplitude ?? 0,
        trials,
        effect: balance.sensitivity * (book.mass ?? 0),
        angle: balance.angle,
      }}
      .names=${['as found', ...trials.map(({ angle }) => `mass at ${formatFigure(angle, 'angle', units)}`)]}
      answer=${answer}
      label=${`Four circles that meet at ${formatFigure(balance.angle, 'angle', units)} clockwise from blade 1; the correction there is ${formatFigure(balance.mass, 'mass', units)}`}
    ></balance-circles>`;
  }

  private renderCheck(walk: BalanceWalk) {
    if (!walk.result) return nothing;
    const { verification } = walk;
    return this.renderStep(
      '7. Run once more to check',
      walk.next === 'check',
      html`
        ${safety('Before this run', massSafety())}
        <p>Trial mass off, correction on, the same speed.</p>
        ${this.renderReading('check', 'Amplitude with the correction', walk)}
        ${verification ? html`<p role="status"><strong>${verificationSentence(verification)}</strong></p>` : nothing}
      `,
    );
  }

  private renderStep(title: string, now: boolean, content: unknown) {
    return html`<li class=${now ? 'step now' : 'step'} aria-current=${now ? 'step' : nothing}>
      <h3>${title}</h3>
      ${content}
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
      .diameter=${this.line.propeller?.diameter ?? 0.04}
      .radius=${radius}
      .masses=${masses}
      .largest=${largest}
      label=${label}
    ></balance-propeller>`;
  }

  private renderField(
    name: 'speed' | 'rotorMass' | 'radius' | 'mass',
    label: string,
    hint: string,
    value: number | undefined,
    quantity: ScreenQuantity,
  ) {
    const { symbol, decimals } = screenUnit(quantity, this.units);
    return html`<number-field
      label=${label}
      hint=${hint}
      unit=${symbol}
      .decimals=${quantity === 'mass' ? decimals + 1 : decimals}
      .value=${value === undefined ? undefined : toScreen(value, quantity, this.units)}
      @value-changed=${({ value: entered }: ValueChangedEvent) => {
        this.takeSize(name, entered === undefined ? undefined : fromScreen(entered, quantity, this.units));
      }}
    ></number-field>`;
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

  private takeSize(name: 'speed' | 'rotorMass' | 'radius' | 'mass', value: number | undefined): void {
    if (value !== undefined && !(value > 0)) return;
    const { [name]: _, ...others } = this.book;
    this.change(value === undefined ? others : { ...others, [name]: value });
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

function safety(title: string, sentences: readonly string[]) {
  return html`<div class="safety">
    <p>${title}</p>
    <ul>
      ${sentences.map((sentence) => html`<li>${sentence}</li>`)}
    </ul>
  </div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'balance-section': BalanceSection;
  }
}
