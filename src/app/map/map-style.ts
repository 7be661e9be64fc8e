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
  .sketch {
    position: absolute;
    inset: 0;
    overflow: hidden;
    pointer-events: none;
    contain: strict;
  }
  .sketch svg {
    display: block;
  }
  .sketch text {
    font-family: var(--sans);
    font-weight: 600;
    paint-order: stroke;
    stroke-linejoin: round;
  }
  .sketch .along {
    font: italic 400 0.875rem var(--serif);
    text-anchor: middle;
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
