import { css } from 'lit';

export const trialsLeafStyles = css`
  :host {
    display: block;
    min-width: 0;
  }
  .bench {
    display: grid;
    gap: var(--gap-large);
    grid-template-columns: minmax(0, 1fr);
  }
  @container (min-width: 56rem) {
    .bench {
      grid-template-columns: 17rem minmax(0, 1fr);
    }
  }
  .holder {
    container-type: inline-size;
  }
  .list {
    list-style: none;
    margin: 0;
    padding: 0;
    display: flex;
    flex-direction: column;
    gap: 0.375rem;
  }
  .list button {
    width: 100%;
    text-align: start;
    padding: 0.5rem 0.75rem;
  }
  .list .aside {
    display: -webkit-box;
    -webkit-box-orient: vertical;
    -webkit-line-clamp: 2;
    overflow: hidden;
    font-weight: 400;
  }
  .recorder {
    margin-bottom: var(--gap-large);
  }
`;
