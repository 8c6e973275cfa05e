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
  header {
    display: flex;
    align-items: center;
    gap: 0.375rem;
    padding: 0.25rem 1rem;
    border-bottom: 1px solid var(--line-thin);
  }
  h1 {
    font-size: var(--text-large);
    font-weight: 600;
    letter-spacing: -0.01em;
    margin: 0 auto 0 0;
    white-space: nowrap;
  }
  h1 small {
    font-weight: 400;
    font-size: 0.9375rem;
    color: var(--ink-soft);
    margin-left: 0.75rem;
    letter-spacing: 0;
  }
  header choice-field {
    min-width: 0;
    flex: 0 1 17rem;
  }
  .sheet {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 15rem;
    gap: 1rem;
    padding: 0.5rem 1rem;
    align-items: stretch;
    border-bottom: 1px solid var(--line-thin);
  }
  line-drawing {
    height: clamp(13rem, 32vh, 19rem);
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
  .ruler {
    display: grid;
    grid-template-columns: 11rem minmax(0, 1fr);
    gap: 0 1rem;
    padding: 0.375rem 1rem 0.25rem;
    border-top: 1.5px solid var(--ink);
    align-items: start;
  }
  speed-ruler {
    height: 7.25rem;
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
  .menu {
    display: flex;
    flex-direction: column;
    gap: 0.75rem;
    align-items: stretch;
  }
  @media (max-width: 62rem) {
    header {
      padding-inline: 0.5rem;
    }
    h1 small {
      display: none;
    }
    .sheet {
      grid-template-columns: minmax(0, 1fr);
      gap: 0;
      padding: 0;
    }
    title-block {
      grid-row: 1;
    }
    tab-bar {
      padding: 0 0.25rem;
    }
    .ruler {
      grid-template-columns: minmax(0, 1fr);
      padding: 0.25rem 0.5rem;
    }
    .wanted {
      display: flex;
      align-items: center;
      gap: 0.5rem;
    }
  }
  @media (max-width: 40rem) {
    h1 {
      display: none;
    }
    header choice-field {
      flex: 1 1 auto;
    }
    line-drawing {
      height: 10rem;
    }
    speed-ruler {
      height: 5.5rem;
    }
    .leaf {
      padding: 1rem 0.75rem 2rem;
    }
  }
  @media (max-height: 40rem) {
    line-drawing {
      height: 9.5rem;
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
  @media print {
    :host {
      height: auto;
    }
    main {
      overflow: visible;
    }
  }
`;
