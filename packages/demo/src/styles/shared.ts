import { css } from 'lit';

/** What every element of the page shares: type, buttons, tables, sentences, focus. */
export const shared = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :host {
    font-family: var(--font);
    font-variant-numeric: tabular-nums;
    color: var(--ink);
  }
  :host([hidden]) {
    display: none;
  }
  :focus-visible {
    outline: 3px solid var(--accent);
    outline-offset: 2px;
  }
  h2,
  h3,
  h4 {
    margin: 0 0 var(--gap);
    font-weight: 600;
    line-height: 1.25;
  }
  h2 {
    font-size: var(--text-large);
  }
  h3 {
    font-size: var(--text);
  }
  p {
    margin: 0 0 var(--gap);
    line-height: 1.5;
    max-width: 70ch;
  }
  .sentence {
    font-size: var(--text-large);
    line-height: 1.4;
    max-width: 60ch;
    text-wrap: pretty;
  }
  .aside,
  .hint {
    color: var(--ink-soft);
    font-size: var(--text-small);
  }
  .problem {
    color: var(--warn);
    font-weight: 500;
  }
  .stale {
    border-left: 4px double var(--warn);
    padding-left: 0.75rem;
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    gap: var(--gap);
    align-items: center;
  }
  button,
  .button {
    font: inherit;
    font-variant-numeric: inherit;
    min-height: var(--touch);
    min-width: var(--touch);
    padding: 0.25rem 0.875rem;
    color: var(--ink);
    background: var(--sheet);
    border: 1px solid var(--line);
    border-radius: var(--radius);
    cursor: pointer;
  }
  button:hover:not(:disabled),
  .button:hover {
    border-color: var(--accent);
    color: var(--accent);
  }
  button:disabled {
    color: var(--ink-soft);
    border-style: dashed;
    cursor: not-allowed;
  }
  button.main {
    background: var(--accent);
    border-color: var(--accent);
    color: var(--on-accent);
    font-weight: 600;
  }
  button.main:hover:not(:disabled) {
    color: var(--on-accent);
    text-decoration: underline;
  }
  button.plain {
    border-color: transparent;
    background: transparent;
    text-decoration: underline;
    text-underline-offset: 0.2em;
  }
  button[aria-pressed='true'],
  button[aria-current='true'] {
    border-color: var(--accent);
    box-shadow: inset 0 -3px 0 var(--accent);
    font-weight: 600;
  }
  .scroll {
    overflow-x: auto;
    max-width: 100%;
  }
  table {
    border-collapse: collapse;
    font-variant-numeric: tabular-nums;
  }
  caption {
    text-align: start;
    font-weight: 600;
    padding-bottom: var(--gap);
  }
  th,
  td {
    padding: 0.375rem 0.875rem 0.375rem 0;
    border-bottom: 1px solid var(--line-thin);
    text-align: start;
    vertical-align: top;
    font-weight: 400;
  }
  thead th {
    border-bottom: 1.5px solid var(--ink);
    font-weight: 600;
    font-size: var(--text-small);
    vertical-align: bottom;
  }
  th.figure,
  td.figure {
    text-align: end;
    white-space: nowrap;
  }
  details > summary {
    min-height: var(--touch);
    display: flex;
    align-items: center;
    gap: 0.5ch;
    cursor: pointer;
    width: fit-content;
    text-decoration: underline;
    text-underline-offset: 0.2em;
  }
  details > summary::before {
    content: '+';
    display: inline-block;
    width: 1ch;
  }
  details[open] > summary::before {
    content: '−';
  }
  @media print {
    .scroll {
      overflow: visible;
    }
    th,
    td {
      padding-block: 0.125rem;
    }
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
`;
