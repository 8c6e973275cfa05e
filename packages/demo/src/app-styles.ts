import { css } from 'lit';

/** The sheet: a bar, the drawing, the leaves, the ruler; only the leaf scrolls. */
export const appStyles = css`
  :host {
    display: grid;
    grid-template-rows: auto auto auto minmax(0, 1fr) auto;
    grid-template-columns: minmax(0, 1fr);
    height: 100vh;
    height: 100dvh;
    background: var(--paper);
    color: var(--ink);
  }
  tab-bar {
    padding: 0 1rem;
    border-bottom: 1px solid var(--ink);
  }
  main {
    overflow-y: auto;
    overflow-x: hidden;
    overscroll-behavior: contain;
    background: var(--sheet);
  }
  .leaf {
    padding: 1.25rem 1rem 2rem;
    max-width: 90rem;
  }
  .leaf:focus-visible {
    outline-offset: -3px;
  }
  .notice {
    position: fixed;
    left: 50%;
    bottom: 9.5rem;
    translate: -50% 0;
    z-index: 2;
    max-width: min(40rem, calc(100vw - 2rem));
    background: var(--sheet);
    border: 1.5px solid var(--ink);
    padding: 0.75rem 1rem;
    display: flex;
    gap: 1rem;
    align-items: center;
  }
  .notice p {
    margin: 0;
    white-space: pre-line;
  }
  .over {
    position: fixed;
    inset: 0.5rem;
    z-index: 3;
    display: grid;
    place-items: center;
    border: 3px dashed var(--accent);
    background: var(--paper);
    opacity: 0.94;
    pointer-events: none;
  }
  @media (max-width: 62rem) {
    tab-bar {
      padding: 0 0.25rem;
    }
  }
  @media (max-width: 40rem) {
    .leaf {
      padding: 1rem 0.75rem 2rem;
    }
  }
  /* Too low for a leaf between the fixtures, as at 200 % zoom: the whole page scrolls instead. */
  @media (max-height: 34rem) {
    :host {
      height: auto;
      min-height: 100dvh;
    }
    main {
      overflow: visible;
    }
  }
  /* On paper only the leaf: bar, drawing, tabs and ruler are for working. */
  @media print {
    :host {
      display: block;
      height: auto;
      min-height: 0;
      background: none;
    }
    header,
    nav,
    section[aria-label='Drawing of the line'],
    section[aria-label='Shaft speed'],
    .notice {
      display: none;
    }
    main {
      overflow: visible;
      background: none;
    }
    .leaf {
      padding: 0;
      max-width: none;
    }
  }
`;
