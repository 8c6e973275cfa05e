import { css } from 'lit';

/** Pens and fills of the line drawing. */
export const drawingStyles = css`
  :host {
    display: block;
    position: relative;
    overflow: hidden;
  }
  svg {
    position: absolute;
    inset: 0;
    font-size: 12px;
  }
  text {
    fill: var(--ink);
    font-variant-numeric: tabular-nums;
  }
  .keel {
    stroke: var(--line-thin);
    stroke-dasharray: 14 3 3 3;
  }
  .station {
    stroke: var(--line-thin);
    stroke-dasharray: 2 3;
  }
  .view-name {
    fill: var(--ink-soft);
    font-size: 11px;
    letter-spacing: 0.06em;
  }
  .axis {
    stroke: var(--line);
    stroke-width: 0.75;
    stroke-dasharray: 10 3 2 3;
    fill: none;
  }
  [data-part] {
    cursor: pointer;
  }
  .motor rect,
  .shaft,
  .bush,
  .disc,
  .joint > g > path,
  .joint circle {
    stroke: var(--ink);
    stroke-width: 1.1;
    fill: var(--sheet);
  }
  .motor path {
    stroke: var(--line);
    fill: none;
  }
  .motor rect {
    stroke-dasharray: 5 2.5;
  }
  .shaft,
  .disc {
    fill: var(--steel);
  }
  .tube {
    fill: var(--brass);
    fill-opacity: 0.45;
    stroke: var(--ink);
    stroke-width: 0.9;
  }
  .bush {
    fill: var(--brass);
  }
  .propeller path {
    fill: var(--brass);
    stroke: var(--ink);
    stroke-width: 1.1;
    stroke-linejoin: round;
  }
  .joint .angle {
    fill: none;
    stroke: var(--ink);
    stroke-width: 0.75;
  }
  .angle-label {
    font-weight: 600;
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 4px;
    stroke-linejoin: round;
  }
  .chosen,
  .chosen path:not(.angle),
  .chosen rect,
  .chosen circle,
  .joint.chosen > g > path {
    stroke: var(--accent);
    stroke-width: 2;
  }
  .tube.chosen {
    stroke-width: 1.25;
  }
  .shaft.chosen {
    fill: var(--accent);
    stroke-width: 1;
  }
  .leader path {
    stroke: var(--line);
    stroke-width: 0.6;
    fill: none;
  }
  .leader circle {
    fill: var(--ink);
    stroke: none;
  }
  .leader.chosen path {
    stroke: var(--accent);
    stroke-width: 1.5;
  }
  .leader.chosen circle {
    fill: var(--accent);
  }
  .bow {
    fill: none;
    stroke: var(--accent);
    stroke-width: 2;
    pointer-events: none;
  }
  .bow.mirrored {
    stroke-width: 1;
    stroke-dasharray: 4 3;
  }
  .bar path {
    stroke: var(--ink);
    fill: none;
  }
  .bar text {
    font-size: 11px;
  }
  .balloons {
    position: absolute;
    inset: 0 0 auto 0;
    height: 0;
  }
  .balloon {
    position: absolute;
    top: 0;
    min-width: 0;
    padding: 0;
    border: 0;
    background: none;
    display: flex;
    flex-direction: column;
    align-items: center;
    justify-content: flex-start;
    gap: 0;
    padding-top: 9px;
    min-height: var(--touch);
  }
  .number {
    display: grid;
    place-items: center;
    width: 1.625rem;
    height: 1.625rem;
    border: 1.25px solid var(--ink);
    border-radius: 50%;
    background: var(--sheet);
    font-size: 0.8125rem;
    line-height: 1;
  }
  .name {
    font-size: 0.75rem;
    line-height: 1.1;
    padding: 1px 3px;
    background: var(--paper);
  }
  .balloon:hover .number {
    border-color: var(--accent);
  }
  .balloon[aria-pressed='true'] {
    box-shadow: none;
  }
  .balloon[aria-pressed='true'] .number {
    background: var(--accent);
    border-color: var(--accent);
    color: var(--on-accent);
  }
  @media (forced-colors: active) {
    .chosen {
      stroke: Highlight;
    }
  }
`;
