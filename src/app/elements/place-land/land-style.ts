/** What the parts of the Land place share: rows, fields, choices. */
import { css } from 'lit';

export const landStyle = css`
  :host {
    display: block;
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  section {
    margin-top: 14px;
  }
  section > h2 {
    margin-bottom: 4px;
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    align-items: center;
  }
  .two {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr));
    gap: 8px;
  }
  .two {
    align-items: end;
  }
  .two > button {
    height: 100%;
  }
  label + p,
  .two + p {
    margin-top: 8px;
  }
  .two > button,
  .wide {
    width: 100%;
  }
  .two > button {
    padding: 4px 8px;
    line-height: 1.15;
  }
  label,
  .field {
    display: block;
    margin-top: 10px;
  }
  label > span:first-child,
  .field > span:first-child {
    display: block;
    margin-bottom: 3px;
    font-weight: 600;
  }
  input:not([type="checkbox"], [type="radio"], [type="file"]),
  select,
  textarea {
    width: 100%;
    min-width: 0;
    min-height: 44px;
    padding: 6px 10px;
    border: var(--rule) solid var(--line);
    border-radius: 5px;
    background: var(--raised);
    color: var(--ink);
    font: inherit;
    font-size: max(1rem, 16px);
  }
  input[type="file"] {
    max-width: 100%;
    min-height: 44px;
    font: inherit;
    color: var(--ink);
  }
  input[type="file"]::file-selector-button {
    min-height: 44px;
    margin-right: 10px;
    padding: 0 14px;
    border: var(--rule) solid var(--ink);
    border-radius: 5px;
    background: var(--raised);
    color: var(--ink);
    font: 600 0.875rem / 1 var(--sans);
    cursor: pointer;
  }
  textarea {
    min-height: 72px;
    resize: vertical;
  }
  .unit {
    display: flex;
    align-items: center;
    gap: 8px;
  }
  .unit > input {
    flex: 1;
  }
  label.switch {
    display: flex;
    align-items: center;
    gap: 10px;
    min-height: 44px;
    margin-top: 0;
    cursor: pointer;
  }
  input[type="checkbox"],
  input[type="radio"] {
    flex: none;
    width: 22px;
    height: 22px;
    margin: 0 3px;
    accent-color: var(--sky);
  }
  .wash {
    margin: 10px 0;
  }
  .why {
    display: block;
    margin-top: 2px;
    font-size: 0.781rem;
    font-weight: 400;
    color: var(--quiet);
  }
  .figures {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 20px;
    margin: 8px 0;
  }
  .figures div {
    display: flex;
    align-items: baseline;
    gap: 6px;
  }
  .figures dd {
    margin: 0;
  }
  hr {
    border: 0;
    border-top: 1px solid var(--ring);
    margin: 14px 0 0;
  }
  details > summary {
    min-height: 44px;
    padding: 11px 0;
    font: 700 0.969rem / 1.25 var(--serif);
    cursor: pointer;
  }
  @media (max-width: 719px) {
    .why {
      font-size: 0.9rem;
    }
    input:not([type="checkbox"], [type="radio"]),
    select,
    label.switch {
      min-height: 52px;
    }
  }
`;
