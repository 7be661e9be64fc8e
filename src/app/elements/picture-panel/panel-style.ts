/** Styles of the picture panel and its parts. */
import { css } from 'lit';

export const panelStyle = css`
  :host {
    display: block;
  }
  section {
    margin-top: 14px;
  }
  h2 + p {
    margin-top: 4px;
  }
  label {
    display: grid;
    gap: 2px;
    margin-top: 8px;
  }
  label.tick {
    grid-template-columns: 24px 1fr;
    gap: 8px;
    align-items: center;
    min-height: 44px;
    margin: 0;
    overflow-wrap: anywhere;
  }
  input[type="checkbox"] {
    width: 22px;
    height: 22px;
    accent-color: var(--sky);
  }
  input[type="range"] {
    width: 100%;
    min-height: 44px;
    accent-color: var(--sky);
  }
  input:not([type="checkbox"], [type="range"], [type="file"]),
  select {
    min-height: 44px;
    width: 100%;
    padding: 0 8px;
    border: 1px solid var(--line);
    border-radius: 5px;
    background: var(--raised);
  }
  input[type="file"] {
    min-height: 44px;
    max-width: 100%;
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    margin-top: 8px;
  }
  .row > label {
    flex: 1 1 90px;
    margin: 0;
  }
  li.picture {
    padding: 6px 0 10px;
    border-bottom: 1px solid var(--line);
  }
  button[aria-pressed="true"] {
    box-shadow: inset 0 -4px 0 var(--rust);
  }
`;
