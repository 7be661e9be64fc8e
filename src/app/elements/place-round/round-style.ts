/** What the pages of the Round share. */
import { css } from 'lit';

export const roundStyle = css`
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
    content: "✓";
    margin-right: 4px;
    font-weight: 700;
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
  @media (max-width: 719px) {
    input,
    select,
    textarea {
      min-height: 56px;
      font-size: 1rem;
    }
  }
`;
