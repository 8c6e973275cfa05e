import { css } from 'lit';

/** What the sections of a leaf share: a rule above, fields in columns, figures beside each other. */
export const sectionStyles = css`
  :host {
    display: block;
  }
  section {
    border-top: 1px solid var(--line-thin);
    padding-top: var(--gap-large);
    margin-top: var(--gap-large);
  }
  fieldset {
    border: 0;
    margin: 0 0 var(--gap-large);
    padding: 0;
    min-width: 0;
  }
  legend {
    font-weight: 600;
    padding: 0;
    margin-bottom: 0.25rem;
  }
  .fields {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr));
    gap: 1rem 1.5rem;
    margin-bottom: 1rem;
  }
  .triples {
    display: grid;
    grid-template-columns: repeat(3, minmax(0, 17rem));
    gap: 0.75rem 1.5rem;
  }
  .quads {
    display: grid;
    grid-template-columns: repeat(4, minmax(0, 11rem));
    gap: 0.75rem 1.25rem;
  }
  .figures {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 34rem));
    gap: 0.5rem 2rem;
    margin-bottom: var(--gap-large);
  }
  data-table {
    display: block;
    margin-bottom: var(--gap-large);
  }
  .tables {
    display: flex;
    flex-wrap: wrap;
    gap: var(--gap-large) 3rem;
  }
  .tables > * {
    min-width: 0;
    max-width: 100%;
  }
  .row {
    margin-bottom: var(--gap-large);
  }
  ul {
    margin: 0 0 var(--gap);
    padding-left: 1.25rem;
  }
  li {
    line-height: 1.45;
    max-width: 70ch;
  }
  @media (max-width: 56rem) {
    .triples,
    .figures {
      grid-template-columns: minmax(0, 1fr);
    }
    .quads {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }
  }
`;
