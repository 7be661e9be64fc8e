/** The list of sites and the two copies that differ. */
import { css } from 'lit';

export const libraryStyle = css`
  section {
    margin-top: 14px;
  }
  h2 {
    margin-bottom: 2px;
  }
  li {
    border-bottom: 1px solid var(--line);
    padding: 4px 0;
  }
  li li {
    border: 0;
  }
  .row {
    display: flex;
    align-items: center;
    gap: 6px;
  }
  .row > :first-child {
    flex: 1;
    min-width: 0;
  }
  button.name {
    padding: 2px 0;
    text-align: left;
    border: 0;
    background: none;
    line-height: 1.25;
    overflow-wrap: anywhere;
  }
  button.name span {
    display: block;
    font-weight: 400;
  }
  button.name .title {
    font: 700 1rem / 1.25 var(--serif);
    text-decoration: underline;
    text-decoration-color: var(--line);
    text-underline-offset: 3px;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 6px;
    padding: 4px 0 8px;
  }
  .acts button,
  .row > button:not(.name) {
    padding: 0 10px;
  }
  label {
    flex: 1 1 100%;
    display: grid;
    gap: 2px;
  }
  input[type="text"] {
    min-height: 44px;
    width: 100%;
    padding: 0 10px;
    border: var(--rule) solid var(--ink);
    border-radius: 5px;
    background: var(--raised);
  }
  .copies {
    display: grid;
    gap: 8px;
    padding: 6px 0;
  }
  .wash {
    margin: 8px 0;
  }
`;
