import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Takes files that are dropped anywhere on the page, or pasted into it. */
export class FileDrop implements ReactiveController {
  /** Whether files hang over the page. */
  over = false;

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly take: (files: readonly File[]) => void,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    window.addEventListener('dragover', this.onDragOver);
    window.addEventListener('dragleave', this.onDragLeave);
    window.addEventListener('drop', this.onDrop);
    window.addEventListener('paste', this.onPaste);
  }

  hostDisconnected(): void {
    window.removeEventListener('dragover', this.onDragOver);
    window.removeEventListener('dragleave', this.onDragLeave);
    window.removeEventListener('drop', this.onDrop);
    window.removeEventListener('paste', this.onPaste);
  }

  private readonly onDragOver = (event: DragEvent): void => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    this.show(true);
  };

  private readonly onDragLeave = (event: DragEvent): void => {
    if (event.relatedTarget === null) this.show(false);
  };

  // A drop that a leaf has taken for itself only ends the hovering.
  private readonly onDrop = (event: DragEvent): void => {
    this.show(false);
    if (event.defaultPrevented || !event.dataTransfer) return;
    event.preventDefault();
    this.hand([...event.dataTransfer.files]);
  };

  private readonly onPaste = (event: ClipboardEvent): void => {
    if (isField(event.composedPath()[0])) return;
    const files = [...(event.clipboardData?.files ?? [])];
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (files.length > 0) this.hand(files);
    else if (text.includes('\n')) this.hand([new File([text], 'pasted.csv', { type: 'text/csv' })]);
  };

  private hand(files: readonly File[]): void {
    if (files.length > 0) this.take(files);
  }

  private show(over: boolean): void {
    if (over === this.over) return;
    this.over = over;
    this.host.requestUpdate();
  }
}

function isField(target: EventTarget | undefined): boolean {
  return target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
}
