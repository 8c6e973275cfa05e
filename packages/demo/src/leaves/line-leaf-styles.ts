import { css } from 'lit';

export const lineLeafStyles = css`
  :host {
    display: block;
  }
  section {
    margin-bottom: var(--gap-large);
  }
  .bench {
    display: grid;
    grid-template-columns: minmax(14rem, 20rem) 1fr;
    gap: var(--gap-large) 2.5rem;
    align-items: start;
  }
  .fields {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr));
    gap: 1rem 1.5rem;
    margin-bottom: 1rem;
  }
  .bench > div:first-child .fields {
    grid-template-columns: 1fr;
    gap: 0.75rem;
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
  .part {
    border-left: 1px solid var(--line-thin);
    padding-left: 1.5rem;
  }
  ul {
    margin: 0 0 0.75rem;
    padding-left: 1.25rem;
  }
  @media (max-width: 47rem) {
    .bench {
      grid-template-columns: 1fr;
    }
    .part {
      border-left: 0;
      padding-left: 0;
      grid-row: 1;
    }
    .parts {
      display: grid;
      grid-template-columns: 1fr 1fr;
    }
  }
`;
