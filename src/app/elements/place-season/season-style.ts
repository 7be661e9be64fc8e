/** Styles the parts of the Season place share. */
import { css } from 'lit';

export const seasonStyle = css`
  /* What is slotted into a page would inherit the page's own measure. */
  :host,
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :host {
    display: block;
  }
  section,
  .section {
    margin-top: 18px;
  }
  h2 + p,
  h3 + p {
    margin-top: 4px;
  }
  p + p {
    margin-top: 6px;
  }
  .line {
    display: grid;
    grid-template-columns: minmax(74px, auto) 1fr;
    gap: 2px 12px;
    padding: 6px 0;
    border-bottom: 1px solid var(--line);
  }
  .line > :first-child {
    font: 700 0.9375rem / 1.3 var(--serif);
  }
  .rows > :last-child {
    border-bottom: 0;
  }
  .interval {
    display: block;
    width: 100%;
    max-width: 240px;
    height: 16px;
    margin-top: 2px;
  }
  .interval .base {
    stroke: var(--line);
    stroke-width: 1;
  }
  .interval .span {
    stroke: var(--sky);
    stroke-width: 4;
  }
  .interval circle {
    fill: var(--ink);
    stroke: var(--paper);
    stroke-width: 1.5;
  }
  .stamp {
    display: inline-block;
    padding: 2px 8px;
    border: 2px solid var(--rust);
    color: var(--rust);
    font: 700 0.9375rem / 1.2 var(--serif);
    letter-spacing: 0.06em;
  }
  .act {
    display: inline-block;
    min-width: 3.2em;
    margin-right: 4px;
    font: 700 0.9375rem / 1.3 var(--serif);
  }
`;
