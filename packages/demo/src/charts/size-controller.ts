import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Keeps the size of an element at hand and renders it anew when that changes. */
export class SizeController implements ReactiveController {
  width = 0;
  height = 0;
  private readonly observer: ResizeObserver | undefined;

  constructor(private readonly host: ReactiveControllerHost & Element) {
    host.addController(this);
    if (typeof ResizeObserver === 'undefined') return;
    this.observer = new ResizeObserver(([entry]) => {
      if (entry) this.take(entry.contentRect);
    });
  }

  hostConnected(): void {
    this.observer?.observe(this.host);
  }

  hostDisconnected(): void {
    this.observer?.disconnect();
  }

  private take({ width, height }: DOMRectReadOnly): void {
    if (Math.abs(width - this.width) < 0.5 && Math.abs(height - this.height) < 0.5) return;
    this.width = width;
    this.height = height;
    this.host.requestUpdate();
  }
}
