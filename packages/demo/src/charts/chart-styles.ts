import { css } from 'lit';

/** What the figures of a trial share. */
export const chartStyles = css`
  :host {
    display: block;
    min-width: 0;
  }
  svg {
    display: block;
    width: 100%;
    font-family: var(--font);
    font-size: 12px;
    overflow: visible;
  }
  svg text {
    fill: var(--ink);
    font-variant-numeric: tabular-nums;
  }
  svg .soft {
    fill: var(--ink-soft);
  }
  .grid {
    stroke: var(--grid);
    stroke-width: 1;
  }
  .axis {
    stroke: var(--line);
    stroke-width: 1;
  }
  .trace {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.1;
    stroke-linejoin: round;
  }
  .area {
    fill: var(--ink);
    stroke: var(--ink);
    stroke-width: 1;
    stroke-linejoin: round;
  }
  .figure {
    touch-action: pan-y;
    cursor: crosshair;
    user-select: none;
    -webkit-user-select: none;
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem;
    align-items: center;
  }
  .readout {
    min-height: 1.5em;
    margin: 0;
    max-width: none;
  }
  .anchor-start {
    text-anchor: start;
  }
  .anchor-middle {
    text-anchor: middle;
  }
  .anchor-end {
    text-anchor: end;
  }
`;
