import { css } from 'lit';

/** Marks of a spectrum: orders where they are, folded ones broken, unseen ones thin. */
export const spectrumStyles = css`
  .order {
    stroke: var(--accent);
    stroke-width: 1.5;
  }
  .order.folded {
    stroke-dasharray: 5 4;
  }
  .order.unseen-order {
    stroke: var(--line);
    stroke-width: 1;
  }
  text {
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 3px;
    stroke-linejoin: round;
  }
  text.order-label {
    stroke: var(--paper);
    stroke-width: 3px;
    stroke-dasharray: none;
    fill: var(--accent);
    font-weight: 600;
  }
  text.order-label.unseen-order {
    fill: var(--ink-soft);
    font-weight: 400;
  }
  .peak {
    fill: var(--sheet);
    stroke: var(--accent);
    stroke-width: 1.5;
  }
  .cursor {
    stroke: var(--ink);
    stroke-width: 1;
  }
  .brush {
    fill: var(--accent);
    fill-opacity: 0.18;
  }
`;
