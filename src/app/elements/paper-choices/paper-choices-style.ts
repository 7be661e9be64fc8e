/** Rows of boxes to tick, and choices of which one is pressed. */
import { css } from 'lit';

export const paperChoicesStyle = css`
  :host {
    display: block;
  }
  /* What lies in a page's slot inherits from the page, which knows no border-box. */
  * {
    box-sizing: border-box;
  }
  fieldset {
    border: 0;
    margin: 0;
    padding: 0;
    min-width: 0;
  }
  .row {
    display: block;
  }
  fieldset,
  .row,
  .two {
    margin-top: 12px;
  }
  .two > fieldset {
    margin-top: 0;
  }
  legend,
  label.row > span {
    display: block;
    font: 700 0.969rem / 1.25 var(--serif);
    padding: 0;
    margin-bottom: 4px;
  }
  .tick {
    display: grid;
    grid-template-columns: auto 1fr auto;
    gap: 10px;
    align-items: center;
    min-height: 44px;
    border-bottom: 1px solid var(--ring);
    cursor: pointer;
  }
  .tick input {
    width: 20px;
    height: 20px;
    margin: 0;
    accent-color: var(--sky);
  }
  .segments {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
  }
  .segments label {
    position: relative;
    flex: 1 1 auto;
    display: grid;
    place-items: center;
    min-height: 44px;
    padding: 4px 10px;
    border: var(--rule) solid var(--ink);
    border-radius: 5px;
    background: var(--raised);
    font-weight: 600;
    cursor: pointer;
  }
  .segments input {
    position: absolute;
    inset: 0;
    margin: 0;
    opacity: 0;
    cursor: pointer;
  }
  .segments label:has(:checked) {
    background: var(--sky-wash);
    box-shadow: inset 0 -4px 0 var(--rust);
  }
  .segments label:has(:focus-visible) {
    outline: 3px solid var(--sky);
    outline-offset: 2px;
  }
  .two {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 0 16px;
  }
  select {
    width: 100%;
    min-height: 44px;
    padding: 0 10px;
    border: var(--rule) solid var(--ink);
    border-radius: 5px;
    background: var(--raised);
  }
  .note {
    margin-top: 4px;
  }
  @media (max-width: 719px) {
    .tick,
    .segments label,
    select {
      min-height: 56px;
    }
  }
`;
