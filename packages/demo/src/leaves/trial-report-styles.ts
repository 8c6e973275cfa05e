import { css } from 'lit';

export const trialReportStyles = css`
  :host {
    display: block;
    min-width: 0;
  }
  trial-speed {
    display: block;
    margin-bottom: var(--gap-large);
  }
  .sentence {
    font-weight: 600;
  }
  section {
    margin-bottom: var(--gap-large);
  }
  progress-bar {
    position: sticky;
    top: 0;
    z-index: 1;
    background: var(--sheet);
    animation: appear 0s 0.25s backwards;
  }
  /* Work that is done in a moment shows no bar. */
  @keyframes appear {
    from {
      visibility: hidden;
    }
  }
  .busy {
    opacity: 0.6;
    transition: opacity 0.1s 0.25s;
  }
  .facts {
    display: flex;
    flex-wrap: wrap;
    gap: var(--gap) var(--gap-large);
    align-items: end;
  }
  .facts text-field {
    flex: 1 1 14rem;
  }
`;
