/** Styles of the map element. */
import { css } from 'lit';

export const mapStyle = css`
  :host {
    display: block;
    position: absolute;
    inset: 0;
  }
  .map {
    position: absolute;
    inset: 0;
    background: var(--paper);
  }
  .map:focus-visible,
  canvas:focus-visible {
    outline: 3px solid var(--sky);
    outline-offset: -5px;
  }
  .plain {
    position: absolute;
    inset: 0;
    display: grid;
    place-content: center;
    padding: 24px;
    text-align: center;
  }
`;
