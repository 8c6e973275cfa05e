import { css } from 'lit';

/** The steps of a balancing: a rule beside each, pictures left of their fields. */
export const balanceStyles = css`
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .step {
    max-width: none;
    border-left: 3px solid var(--line-thin);
    padding: 0 0 0.25rem 1rem;
    margin-bottom: var(--gap-large);
  }
  .step.now {
    border-left-color: var(--accent);
  }
  .side {
    display: grid;
    grid-template-columns: minmax(0, 13rem) minmax(0, 1fr);
    gap: 0.5rem 2rem;
    align-items: start;
  }
  .circles {
    max-width: 27rem;
    min-width: 0;
  }
  .safety {
    border: 1px solid var(--warn);
    padding: 0.5rem 0.75rem;
    margin-bottom: 0.75rem;
    max-width: 74ch;
  }
  .safety p {
    font-weight: 600;
    margin-bottom: 0.25rem;
  }
  .safety ul {
    list-style: disc;
  }
  @media (max-width: 40rem) {
    .side {
      grid-template-columns: minmax(0, 1fr);
    }
    .step {
      padding-left: 0.625rem;
    }
  }
`;
