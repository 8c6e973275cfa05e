import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Where a figure is read out across, by pointer or by arrow keys; undefined until someone asks. */
export class ReadOutController implements ReactiveController {
  /** 0 at the left end of the axis, 1 at the right. */
  share: number | undefined;

  /** @param shareAt - the share at a place in px across the element */
  constructor(
    private readonly host: ReactiveControllerHost & Element,
    private readonly shareAt: (x: number) => number,
  ) {
    host.addController(this);
  }

  hostDisconnected(): void {
    this.share = undefined;
  }

  readonly onMove = (event: PointerEvent): void => {
    this.read(this.shareAt(event.clientX - this.host.getBoundingClientRect().left));
  };

  readonly onKeydown = (event: KeyboardEvent): void => {
    const step = event.shiftKey ? 0.05 : 0.005;
    const here = this.share ?? 0;
    const moves: Readonly<Record<string, number>> = {
      ArrowRight: here + step,
      ArrowUp: here + step,
      ArrowLeft: here - step,
      ArrowDown: here - step,
      Home: 0,
      End: 1,
    };
    const next = moves[event.key];
    if (next === undefined) return;
    event.preventDefault();
    this.read(next);
  };

  private read(share: number): void {
    this.share = Math.min(1, Math.max(0, share));
    this.host.requestUpdate();
  }
}
