import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { OrderReading, ShaftLine } from '@sternline/core';
import '../charts/order-table.js';
import '../charts/spectrum-chart.js';
import '../charts/waveform-chart.js';
import '../elements/chart-frame.js';
import { figureText } from '../charts/figure-text.js';
import { StretchChosenEvent } from '../charts/waveform-chart.js';
import type { ChannelSpectrum, TrialAnalysis } from '../model/analysis-types.js';
import { orderDriver } from '../model/order-drivers.js';
import type { Trial } from '../model/project.js';
import { peakTable } from '../model/peak-table.js';
import { durationWords, resolutionSentence } from '../model/reading-words.js';
import { shared } from '../styles/shared.js';

/** The user wants to see another channel. */
export class ChannelChosenEvent extends Event {
  static readonly type = 'channel-chosen';
  constructor(readonly channel: string) {
    super(ChannelChosenEvent.type, { bubbles: true, composed: true });
  }
}

const FOLDED =
  'A broken mark is an order beyond half the sampling rate: it appears there, folded down, and its height is not to be relied on.';

/** The figures behind an answer: spectrum, orders, peaks, and the recording over time. */
@customElement('trial-figures')
export class TrialFigures extends LitElement {
  static override styles = [
    shared,
    css`
      section {
        margin-bottom: var(--gap-large);
      }
      .channels {
        margin-bottom: var(--gap);
      }
    `,
  ];

  @property({ attribute: false }) trial: Trial | undefined;
  @property({ attribute: false }) analysis: TrialAnalysis | undefined;
  @property({ attribute: false }) line: ShaftLine | undefined;
  /** The channel on show; the strongest unless told. */
  @property() channel: string | undefined;

  protected override render() {
    const { trial, analysis } = this;
    if (!trial || !analysis) return nothing;
    const spectrum = analysis.spectra.find((one) => one.channel === this.channel) ?? analysis.spectra[0];
    return html`
      ${this.renderTime(spectrum?.channel, { trial, analysis })}
      ${spectrum ? this.renderSpectrum(spectrum, { trial, analysis }) : renderNoSpectrum()}
      ${this.renderOrders(analysis)}
    `;
  }

  /** Orders that stand out, and those that a builder asks for first. */
  private get mainOrders(): readonly OrderReading[] {
    const asked = [1, 2, this.line?.propeller?.blades];
    return this.analysis?.diagnosis.orders.filter((one) => one.seen || asked.includes(one.order)) ?? [];
  }

  private renderOrders({ diagnosis }: TrialAnalysis) {
    const main = this.mainOrders;
    const rest = diagnosis.orders.filter((one) => !main.includes(one));
    const rows = (orders: readonly OrderReading[]) =>
      orders.map((row) => ({ ...row, driver: orderDriver(row.order, this.line) }));
    return html`<section>
      <h4>Orders of shaft speed</h4>
      <order-table .rows=${rows(main)}></order-table>
      ${
        rest.length > 0
          ? html`<details>
              <summary>Orders that do not stand out: ${rest.length}</summary>
              <order-table .rows=${rows(rest)}></order-table>
            </details>`
          : nothing
      }
    </section>`;
  }

  private renderSpectrum(spectrum: ChannelSpectrum, shown: { trial: Trial; analysis: TrialAnalysis }) {
    const { trial, analysis } = shown;
    const peaks = analysis.diagnosis.peaks
      .filter((peak) => peak.channel === spectrum.channel)
      .sort((a, b) => b.amplitude - a.amplitude);
    return html`<section>
      ${this.renderChannels(analysis.spectra, spectrum)}
      <chart-frame
        label=${`Spectrum of ${spectrum.channel}`}
        file=${`${trial.name}, spectrum of ${spectrum.channel}`}
        .table=${peakTable(peaks, analysis.speed)}
        ><spectrum-chart
          name=${`${trial.name}, spectrum of ${spectrum.channel}`}
          unit=${spectrum.unit}
          .lines=${spectrum}
          .orders=${this.mainOrders}
          .peaks=${peaks}
          .shaftFrequency=${analysis.speed / (2 * Math.PI)}
        ></spectrum-chart
      ></chart-frame>
      <p class="aside">
        Peak amplitude in ${spectrum.unit}. ${resolutionSentence(analysis.resolution)}
        ${this.mainOrders.some((order) => order.folded) ? FOLDED : nothing}
      </p>
    </section>`;
  }

  private renderChannels(spectra: readonly ChannelSpectrum[], shown: ChannelSpectrum) {
    if (spectra.length < 2) return nothing;
    return html`<div class="row channels" role="group" aria-label="Channel">
      ${spectra.map(
        ({ channel }) =>
          html`<button
            type="button"
            aria-pressed=${channel === shown.channel ? 'true' : 'false'}
            @click=${() => this.dispatchEvent(new ChannelChosenEvent(channel))}
          >
            ${channel}
          </button>`,
      )}
    </div>`;
  }

  private renderTime(channel: string | undefined, shown: { trial: Trial; analysis: TrialAnalysis }) {
    const { trial, analysis } = shown;
    const envelope = analysis.envelopes.find((one) => one.channel === channel) ?? analysis.envelopes[0];
    if (!envelope) return nothing;
    const { sampleRate, sampling } = trial.recording;
    const { part } = analysis;
    const whole = part.to - part.from >= envelope.duration * 0.999;
    return html`<section>
      <h4>Over time</h4>
      <waveform-chart
        name=${`${trial.name}, ${envelope.channel}`}
        .envelope=${envelope}
        .stretch=${part}
        .gaps=${sampling.gaps.map((gap) => ({
          from: gap.start / sampleRate,
          to: (gap.start + gap.count) / sampleRate,
        }))}
      ></waveform-chart>
      <div class="row">
        <span class="aside">
          ${
            whole
              ? 'The whole recording is read. Where the speed changed, drag over a stretch of steady running.'
              : `Only ${figureText(part.from)} s to ${figureText(part.to)} s is read, ${durationWords(part.to - part.from)}.`
          }
        </span>
        ${
          whole
            ? nothing
            : html`<button
                type="button"
                @click=${() => this.dispatchEvent(new StretchChosenEvent({ from: 0, to: envelope.duration }))}
              >
                Read the whole recording
              </button>`
        }
      </div>
    </section>`;
  }
}

function renderNoSpectrum() {
  return html`<p class="problem">The recording is too short or too torn by gaps for a spectrum.</p>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-figures': TrialFigures;
  }
  interface HTMLElementEventMap {
    'channel-chosen': ChannelChosenEvent;
  }
}
