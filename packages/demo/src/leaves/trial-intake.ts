import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import '../elements/drop-zone.js';
import { FilesChosenEvent } from '../elements/drop-zone.js';
import '../elements/progress-bar.js';
import type { ReadChoices } from '../model/analysis-types.js';
import { shared } from '../styles/shared.js';
import type { PendingFile } from './pending-file.js';
import './reading-question.js';
import type { ReadingQuestion } from './reading-question.js';

/** A pending file is to be read with these choices, or to be put aside. */
export class PendingEvent extends Event {
  static readonly type = 'pending';
  constructor(
    readonly key: string,
    readonly choices: ReadChoices | undefined,
  ) {
    super(PendingEvent.type, { bubbles: true, composed: true });
  }
}

/** Takes recordings in: dropped, chosen or pasted; asks what a file does not tell. */
@customElement('trial-intake')
export class TrialIntake extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      textarea {
        font: inherit;
        width: 100%;
        min-height: 7rem;
        color: var(--ink);
        background: var(--sheet);
        border: 1px solid var(--line);
        border-radius: var(--radius);
      }
      article {
        border-left: 3px solid var(--accent);
        padding: 0.25rem 0 0.25rem 0.75rem;
        margin: var(--gap-large) 0;
      }
      article.stopped {
        border-left: 4px double var(--warn);
      }
    `,
  ];

  @property({ attribute: false }) pending: readonly PendingFile[] = [];
  @state() private pasteProblem = '';
  @query('textarea') private readonly textarea!: HTMLTextAreaElement;

  protected override render() {
    return html`
      <drop-zone
        label="Choose a recording"
        accept=".csv,.tsv,.txt,.json,.jsonl,.ndjson,.wav,audio/*,video/*,text/*"
      >
        or drop it here: text from any motion logger (CSV, TSV, TXT, JSON lines), WAV, or any sound or video
        that this browser plays. It stays on this device.
      </drop-zone>
      <details>
        <summary>Paste samples as text</summary>
        <label for="paste">Samples, a row each; a header helps</label>
        <textarea id="paste" spellcheck="false" aria-describedby="paste-problem"></textarea>
        <p id="paste-problem" class="problem" role="alert">${this.pasteProblem}</p>
        <button type="button" @click=${this.onPaste}>Read the pasted text</button>
      </details>
      ${this.pending.map((one) => this.renderPending(one))}
    `;
  }

  private renderPending(one: PendingFile) {
    const { file, progress, stopped, cancelled } = one;
    return html`<article class=${stopped ? 'stopped' : ''} aria-label=${file.name}>
      <h3>${file.name}</h3>
      ${progress ? html`<progress-bar label=${progress.doing} .share=${progress.share}></progress-bar>` : nothing}
      ${stopped ? this.renderStopped(one, stopped) : nothing}
      ${
        cancelled
          ? html`<p role="status">Reading was cancelled.</p>
              <div class="row">
                <button
                  type="button"
                  @click=${() => {
                    this.answer(one, one.choices);
                  }}
                >
                  Read it after all
                </button>
                ${this.renderAside(one)}
              </div>`
          : nothing
      }
    </article>`;
  }

  private renderStopped(one: PendingFile, stopped: NonNullable<PendingFile['stopped']>) {
    return html`
      <p role="alert"><span class="problem">${stopped.found}</span> ${stopped.remedy}</p>
      <reading-question
        code=${stopped.code}
        .choices=${one.choices}
        @answered=${(event: Event) => {
          this.answer(one, (event.target as ReadingQuestion).answers);
        }}
      ></reading-question>
      ${this.renderAside(one)}
    `;
  }

  private renderAside(one: PendingFile) {
    return html`<button
      type="button"
      class="plain"
      @click=${() => {
        this.answer(one, undefined);
      }}
    >
      Put this file aside
    </button>`;
  }

  private answer(one: PendingFile, choices: ReadChoices | undefined): void {
    this.dispatchEvent(new PendingEvent(one.key, choices));
  }

  private onPaste(): void {
    const text = this.textarea.value;
    this.pasteProblem = text.trim() === '' ? 'Nothing is pasted yet.' : '';
    if (this.pasteProblem) return;
    this.dispatchEvent(
      new FilesChosenEvent([new File([text], 'Pasted samples.txt', { type: 'text/plain' })]),
    );
    this.textarea.value = '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-intake': TrialIntake;
  }
  interface HTMLElementEventMap {
    pending: PendingEvent;
  }
}
