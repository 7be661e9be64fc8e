/** Styles every element of the notebook shares: type, buttons, focus. Sizes are those of the look's type table, in rem of 16 px. */
import { css } from 'lit';

export const shared = css`
  :host {
    box-sizing: border-box;
    color: var(--ink);
    font-family: var(--sans);
    font-size: 0.859rem;
    line-height: 1.4;
  }
  *,
  *::before,
  *::after {
    box-sizing: inherit;
  }
  :host([hidden]),
  [hidden] {
    display: none !important;
  }
  h1,
  h2,
  h3,
  p,
  ul,
  ol,
  dl,
  figure {
    margin: 0;
    padding: 0;
  }
  ul,
  ol {
    list-style: none;
  }
  h1 {
    font: 700 1.875rem / 1.1 var(--serif);
  }
  h2 {
    font: 700 0.969rem / 1.25 var(--serif);
  }
  h3 {
    font: 700 0.875rem / 1.3 var(--serif);
  }
  h1 + p {
    margin-top: 4px;
  }
  .sub {
    font: italic 400 1.125rem / 1.2 var(--serif);
  }
  .number {
    font: 700 1rem / 1 var(--serif);
    font-variant-numeric: lining-nums;
  }
  .small {
    font-size: 0.781rem;
    color: var(--quiet);
  }
  .quiet {
    color: var(--quiet);
  }
  button,
  select,
  input {
    font: inherit;
    color: inherit;
  }
  button {
    min-height: 44px;
    min-width: 44px;
    padding: 0 14px;
    border: var(--rule) solid var(--ink);
    border-radius: 5px;
    background: var(--raised);
    font-weight: 600;
    font-size: 0.875rem;
    cursor: pointer;
    touch-action: manipulation;
  }
  button.filled {
    background: var(--sky);
    border-color: var(--sky);
    color: var(--on-sky);
  }
  button.text {
    border-color: transparent;
    background: none;
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  button:active:not(:disabled) {
    translate: 0 1px;
  }
  button:disabled,
  button[aria-disabled="true"] {
    color: var(--quiet);
    border-color: var(--line);
    cursor: default;
  }
  @media (hover: hover) {
    button:hover:not(:disabled, [aria-disabled="true"], .filled) {
      background: var(--sky-wash);
    }
  }
  :focus-visible {
    outline: 3px solid var(--sky);
    outline-offset: 2px;
    box-shadow: 0 0 0 2px var(--paper);
  }
  @media (forced-colors: active) {
    button[aria-pressed="true"],
    button[aria-selected="true"] {
      outline: 2px solid Highlight;
      outline-offset: -4px;
    }
    button.filled {
      border-width: 3px;
    }
  }
  .weak {
    color: var(--rust);
  }
  .wash {
    background: var(--rust-wash);
    border-left: 4px solid var(--rust);
    padding: 6px 10px;
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  @media (max-width: 719px) {
    :host {
      font-size: 1rem;
    }
    .small {
      font-size: 0.9rem;
    }
    h2 {
      font-size: 1.125rem;
    }
    button {
      min-height: 56px;
      border-radius: 6px;
      font-size: 1rem;
    }
  }
`;
