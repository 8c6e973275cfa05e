import { css } from 'lit';

/** Pens and fills of the speed ruler. */
export const rulerStyles = css`
  :host {
    display: block;
    position: relative;
    overflow: hidden;
  }
  svg {
    position: absolute;
    inset: 0;
    font-size: 12px;
    touch-action: pan-y;
    cursor: ew-resize;
    user-select: none;
  }
  text {
    fill: var(--ink);
    font-variant-numeric: tabular-nums;
  }
  .lane {
    stroke: var(--line-thin);
    stroke-width: 0.75;
  }
  .lane-name,
  .tick-name {
    fill: var(--ink-soft);
  }
  .unit {
    fill: var(--ink-soft);
  }
  .axis,
  .tick {
    stroke: var(--ink);
  }
  .ground {
    fill: var(--paper);
  }
  .hatched {
    stroke: var(--hatch);
    stroke-width: 1;
  }
  .hatching {
    stroke: var(--hatch);
    stroke-width: 1.4;
  }
  .critical {
    stroke: var(--hatch);
    stroke-width: 2;
  }
  .band-name,
  .limit text {
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 4px;
    stroke-linejoin: round;
  }
  .limit line {
    stroke: var(--ink);
    stroke-width: 2;
  }
  .limit path {
    fill: var(--ink);
  }
  .limit text {
    font-weight: 600;
  }
  .wanted line {
    stroke: var(--accent);
    stroke-width: 2;
  }
  .wanted path {
    fill: var(--accent);
    stroke: var(--paper);
  }
  .level {
    fill: var(--ink);
    stroke: var(--paper);
    stroke-width: 1;
  }
  .unseen-level {
    fill: var(--paper);
    stroke: var(--line);
  }
  .handle {
    position: absolute;
    bottom: 0;
    width: 44px;
    height: 44px;
    cursor: ew-resize;
    touch-action: none;
    border-radius: var(--radius);
  }
`;
