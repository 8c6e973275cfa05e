import { css } from 'lit';

/**
 * Custom properties of the page: a drawing-office sheet by day, a blueprint by night.
 * Text on paper holds 4.5:1, lines that carry meaning 3:1, in both schemes.
 */
export const tokens = css`
  :root {
    color-scheme: light dark;
    --paper: #f7f2e6;
    --sheet: #fdfaf2;
    --paper-deep: #ece4d2;
    --ink: #13233d;
    --ink-soft: #47556b;
    --line: #6d7787;
    --line-thin: #b9b6ab;
    --grid: #e3dccb;
    --accent: #a0431a;
    --accent-soft: #f3dfcf;
    --on-accent: #fffaf2;
    --warn: #8a2b1d;
    --steel: #cfd6dd;
    --brass: #e4cf95;
    --water: #e6e8e2;
    --hatch: #8a2b1d;
    --shadow: 0 1px 2px rgb(19 35 61 / 0.12);
    --font: 'Barlow', 'Segoe UI', 'Helvetica Neue', Arial, sans-serif;
    --text-small: 0.8125rem;
    --text: 1rem;
    --text-large: 1.25rem;
    --text-huge: 1.625rem;
    --gap: 0.5rem;
    --gap-large: 1.25rem;
    --touch: 44px;
    --radius: 2px;
  }

  @media print {
    :root {
      color-scheme: light;
      --paper: #fff;
      --sheet: #fff;
      --text-small: 8.5pt;
      --text: 9.5pt;
      --text-large: 13pt;
    }
  }

  @media (max-width: 40rem) {
    :root {
      --text-large: 1.125rem;
    }
  }

  @media screen and (prefers-color-scheme: dark) {
    :root {
      --paper: #0c2340;
      --sheet: #0f2a4c;
      --paper-deep: #091b33;
      --ink: #eaf1fa;
      --ink-soft: #b3c4d9;
      --line: #8ba3c0;
      --line-thin: #3d5a80;
      --grid: #1a3961;
      --accent: #f2a772;
      --accent-soft: #3a3a4c;
      --on-accent: #0c2340;
      --warn: #ffb4a0;
      --steel: #2f4f78;
      --brass: #5d5a4a;
      --water: #12305a;
      --hatch: #ffb4a0;
      --shadow: none;
    }
  }
`;
