import { css, html, LitElement } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';

/** Files were dropped or chosen. */
export class FilesChosenEvent extends Event {
  static readonly type = 'files-chosen';
  constructor(readonly files: readonly File[]) {
    super(FilesChosenEvent.type, { bubbles: true, composed: true });
  }
}

/** A place to drop files on, with a button to choose them. */
@customElement('drop-zone')
export class DropZone extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      .zone {
        border: 1.5px dashed var(--line);
        border-radius: var(--radius);
        padding: 0.75rem;
        display: flex;
        flex-wrap: wrap;
        gap: var(--gap) 0.75rem;
        align-items: center;
      }
      .zone.over {
        border-color: var(--accent);
        border-style: solid;
        background: var(--accent-soft);
      }
      p {
        margin: 0;
        flex: 1 1 14rem;
      }
    `,
  ];

  @property() label = 'Choose files';
  @property() accept = '';
  @state() private over = false;
  @query('input') private readonly input!: HTMLInputElement;

  protected override render() {
    return html`<div
      class="zone ${this.over ? 'over' : ''}"
      @dragover=${this.onDragOver}
      @dragleave=${() => (this.over = false)}
      @drop=${this.onDrop}
    >
      <button
        type="button"
        class="main"
        @click=${() => {
          this.input.click();
        }}
      >
        ${this.label}
      </button>
      <p><slot></slot></p>
      <input
        type="file"
        multiple
        hidden
        aria-label=${this.label}
        accept=${this.accept}
        @change=${this.onChosen}
      />
    </div>`;
  }

  private onDragOver(event: DragEvent): void {
    event.preventDefault();
    this.over = true;
  }

  private onDrop(event: DragEvent): void {
    event.preventDefault();
    event.stopPropagation();
    this.over = false;
    this.choose(event.dataTransfer?.files);
  }

  private onChosen(): void {
    this.choose(this.input.files);
    // The same file may be chosen again after it was mended.
    this.input.value = '';
  }

  private choose(list: FileList | null | undefined): void {
    const files = [...(list ?? [])];
    if (files.length > 0) this.dispatchEvent(new FilesChosenEvent(files));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'drop-zone': DropZone;
  }
  interface HTMLElementEventMap {
    'files-chosen': FilesChosenEvent;
  }
}
