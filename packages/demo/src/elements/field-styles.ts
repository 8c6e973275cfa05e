import { css } from 'lit';

/** The frame that every field shares: label above, box with its unit, hint and problem below. */
export const fieldStyles = css`
  :host {
    display: flex;
    flex-direction: var(--field-direction, column);
    flex-wrap: var(--field-wrap, nowrap);
    align-items: var(--field-align, stretch);
    gap: 0.125rem;
    min-width: 0;
  }
  :host([compact]) {
    gap: 0;
  }
  label,
  .label {
    font-weight: 500;
    font-size: 0.9375rem;
  }
  .box {
    display: inline-flex;
    align-items: baseline;
    gap: 0.375rem;
  }
  input,
  select,
  textarea {
    font: inherit;
    font-variant-numeric: tabular-nums;
    color: var(--ink);
    background: var(--sheet);
    border: 0;
    border-bottom: 1.5px solid var(--line);
    border-radius: var(--radius) var(--radius) 0 0;
    min-height: var(--touch);
    padding: 0.25rem 0.375rem;
    max-width: 100%;
  }
  input:hover,
  select:hover {
    border-bottom-color: var(--accent);
  }
  [aria-invalid='true'] {
    border-bottom: 3px double var(--warn);
  }
  .unit {
    color: var(--ink-soft);
    min-width: 2.25rem;
  }
  .hint {
    display: var(--field-hint, inline);
    max-width: 40ch;
    line-height: 1.35;
  }
  .problem {
    font-size: var(--text-small);
    max-width: 40ch;
    line-height: 1.35;
  }
  .problem:not(:empty)::before {
    content: '✕ ';
  }
`;
