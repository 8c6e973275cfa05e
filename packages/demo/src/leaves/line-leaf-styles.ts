import { css } from 'lit';

export const lineLeafStyles = css`
  :host {
    display: block;
  }
  .bench {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1.1fr);
    grid-template-rows: auto 1fr;
    gap: var(--gap-large) 2rem;
    align-items: start;
  }
  part-form {
    grid-column: 2;
    grid-row: 1 / 3;
  }
  .fields {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr));
    gap: 1rem 1.5rem;
    margin-bottom: 1rem;
  }
  .layout {
    border-top: 1px solid var(--line-thin);
    padding-top: 1rem;
  }
  .parts {
    list-style: none;
    margin: 0;
    padding: 0;
    border-top: 1.5px solid var(--ink);
  }
  .parts button {
    width: 100%;
    text-align: start;
    border: 0;
    border-bottom: 1px solid var(--line-thin);
    background: none;
    display: flex;
    gap: 0.75rem;
    align-items: center;
    padding: 0.25rem;
  }
  .parts button[aria-current='true'] {
    box-shadow: inset 4px 0 0 var(--accent);
    padding-left: 0.75rem;
  }
  .number {
    display: inline-grid;
    place-items: center;
    width: 1.625rem;
    height: 1.625rem;
    border: 1.25px solid currentColor;
    border-radius: 50%;
    font-size: 0.8125rem;
  }
  part-form {
    border-left: 1px solid var(--line-thin);
    padding-left: 1.5rem;
  }
  .problem .plain {
    padding-inline: 0;
    font-weight: 500;
    color: inherit;
  }
  ul {
    margin: 0 0 0.75rem;
    padding-left: 1.25rem;
  }
  @media (max-width: 56rem) {
    .bench {
      grid-template-columns: minmax(0, 1fr);
    }
    part-form {
      grid-column: 1;
      grid-row: auto;
      border-left: 0;
      padding-left: 0;
      border-top: 1px solid var(--line-thin);
      padding-top: 1rem;
    }
  }
`;
