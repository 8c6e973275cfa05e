import { css } from 'lit';

/** The sheet on screen, and on two pages of A4. */
export const sheetStyles = css`
  :host {
    display: block;
    max-width: 56rem;
  }
  header {
    display: flex;
    justify-content: space-between;
    gap: 1rem;
    align-items: start;
  }
  header h2 {
    margin-bottom: 0;
  }
  .estimates {
    border-left: 4px double var(--line);
    padding-left: 0.75rem;
  }
  section {
    border-top: 1px solid var(--line-thin);
    padding-top: 0.75rem;
    margin-top: 0.75rem;
    break-inside: avoid;
  }
  data-table {
    display: block;
  }
  ul {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  li {
    display: grid;
    grid-template-columns: 1.75rem 1fr;
    padding: 0.25rem 0;
    line-height: 1.45;
    break-inside: avoid;
    max-width: 80ch;
  }
  .box {
    width: 1rem;
    height: 1rem;
    margin-top: 0.2em;
    border: 1.25px solid var(--ink);
  }
  .caution {
    display: block;
    border-left: 3px solid var(--warn);
    padding-left: 0.5rem;
    margin: 0.25rem 0;
    font-size: 0.9375rem;
  }
  .caution strong {
    color: var(--warn);
  }
  .ruled i {
    display: block;
    height: 1.75rem;
    border-bottom: 1px solid var(--line-thin);
  }
  @media print {
    :host {
      max-width: none;
      font-size: 9.5pt;
    }
    .unprinted {
      display: none;
    }
    .page.second {
      break-before: page;
    }
    p,
    li {
      line-height: 1.3;
      max-width: none;
    }
    section {
      padding-top: 0.375rem;
      margin-top: 0.375rem;
    }
    .sentence {
      font-size: 12pt;
      margin-bottom: 0.25rem;
      max-width: none;
    }
    .caution {
      font-size: 8.5pt;
      margin: 0.125rem 0;
    }
    .ruled i {
      height: 8mm;
    }
  }
`;
