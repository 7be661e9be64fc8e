/** The visit's page: one column, large choices, nothing beside each other that a thumb could miss. */
import { css } from 'lit';

export const formStyle = css`
  :host {
    display: block;
    height: 100%;
    min-height: 0;
  }
  .head {
    display: flex;
    align-items: baseline;
    justify-content: space-between;
    gap: 8px;
  }
  mp-visit-choices {
    display: block;
    margin: 8px 0;
  }
  mp-count-keys,
  .trouble {
    display: block;
    margin-top: 10px;
  }
  summary {
    font: 700 1rem / 1.25 var(--serif);
    cursor: pointer;
    min-height: 48px;
    padding: 14px 0;
  }
  details {
    margin-top: 12px;
    border-top: 1px solid var(--line);
  }
  details.inner {
    border: 0;
    margin-top: 4px;
  }
  .offer {
    padding: 8px 0;
    border-bottom: 1px solid var(--ring);
  }
  .offer li {
    padding-left: 14px;
    position: relative;
  }
  .offer li::before {
    content: "–";
    position: absolute;
    left: 0;
  }
  .odd p + p {
    margin-top: 4px;
  }
  label {
    margin-top: 14px;
  }
  label > input,
  label > textarea {
    display: block;
    width: 100%;
    margin-top: 4px;
    font-weight: 400;
  }
  input::file-selector-button {
    font: 600 0.875rem / 1 var(--sans);
    min-height: 36px;
    margin-right: 10px;
    padding: 0 12px;
    border: var(--rule) solid var(--ink);
    border-radius: 5px;
    background: var(--raised);
    color: var(--ink);
  }
  .when {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 8px;
  }
  @media (max-width: 719px) {
    summary {
      min-height: 56px;
      padding: 18px 0;
    }
    button[slot="foot"] {
      min-height: 64px;
      font-size: 1.06rem;
    }
    button.keep {
      font: 700 1.3rem / 1.1 var(--serif);
    }
    h1 {
      font-size: 1.75rem;
    }
  }
`;
