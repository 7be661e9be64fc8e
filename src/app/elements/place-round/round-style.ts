/** What the pages of the Round share. */
import { css } from 'lit';

export const roundStyle = css`
  /* What is slotted into a page would inherit the page's own measure. */
  :host,
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  h1 {
    margin-bottom: 4px;
  }
  section {
    margin-top: 16px;
  }
  section > h2 {
    margin-bottom: 6px;
  }
  .choices {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
  }
  .choices button {
    padding: 0 12px;
    display: inline-flex;
    align-items: center;
    gap: 6px;
  }
  button[aria-pressed="true"],
  button[aria-checked="true"] {
    background: var(--sky-wash);
    border-color: var(--sky);
    box-shadow: inset 0 0 0 1.5px var(--sky);
  }
  button[aria-pressed="true"]::before {
    content: "";
    flex: none;
    display: inline-block;
    width: 5px;
    height: 11px;
    margin: 0 6px 3px 2px;
    border: solid var(--sky);
    border-width: 0 2.5px 2.5px 0;
    rotate: 42deg;
  }
  button.filled:disabled {
    background: var(--raised);
    border-color: var(--line);
    color: var(--quiet);
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    margin-top: 8px;
  }
  .wash {
    margin-top: 8px;
  }
  .wash button.text {
    color: var(--rust);
  }
  label {
    display: block;
    font-weight: 600;
  }
  input,
  select,
  textarea {
    font: inherit;
    color: var(--ink);
    background: var(--raised);
    border: var(--rule) solid var(--ink);
    border-radius: 5px;
    min-height: 44px;
    padding: 4px 10px;
  }
  ul.plain > li {
    padding: 6px 0;
    border-bottom: 1px solid var(--ring);
  }
  /* Gloves, sun, a phone held low: nothing to press is lower than 56 px in the field. */
  @media (max-width: 719px) {
    button,
    summary {
      min-height: 56px;
    }
    input,
    select,
    textarea {
      min-height: 56px;
      font-size: 1rem;
    }
  }
`;
