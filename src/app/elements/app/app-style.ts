/** The frame of the window. */
import { css } from 'lit';

export const appStyle = css`
  :host {
    --serif: "Source Serif 4", "Iowan Old Style", Palatino, P052, Georgia, serif;
    --sans: "Source Sans 3", "Segoe UI", "Noto Sans", sans-serif;
    /* As wide as its letters ask for, up to half the window. */
    --notebook: clamp(400px, 25rem, 46vw);
    /* Height of the tabs on a phone, where they may take two rows; measured. */
    --tabs: 56px;
    /* What is in the window asks how many letters fit into it. */
    container-type: size;
    display: block;
    position: fixed;
    inset: 0;
    overflow: hidden;
    background: var(--paper);
  }
  mp-notebook {
    position: absolute;
    left: 16px;
    top: 16px;
    bottom: 16px;
    width: var(--notebook);
    z-index: 2;
  }
  mp-slips {
    position: absolute;
    inset: 0;
    left: calc(var(--notebook) + 32px);
    z-index: 1;
    pointer-events: none;
  }
  mp-messages {
    position: absolute;
    left: calc(var(--notebook) + 32px);
    right: 16px;
    /* Above the slips at the foot of the map. */
    bottom: 76px;
    z-index: 3;
    pointer-events: none;
  }
  /* Nor over the panel of pictures: the scan in it is being pressed. */
  :host([data-panel]) mp-messages {
    right: 372px;
  }
  .skip {
    position: absolute;
    left: -9999px;
    top: 0;
    z-index: 9;
  }
  .skip:focus {
    left: 16px;
  }
  /* The sheets lie over the map: what they cover must not be reached by key. */
  @media (min-width: 720px) {
    :host([data-place="paper"]) :is(mp-map, mp-box-keys, mp-slips) {
      visibility: hidden;
    }
  }
  @media (max-width: 1099px) {
    :host {
      --notebook: clamp(360px, 22.5rem, 50vw);
    }
  }
  @media (max-width: 719px) {
    mp-notebook {
      inset: 0;
      width: auto;
      pointer-events: none;
    }
    mp-slips {
      left: 0;
      top: calc(var(--tabs) + 6px);
    }
    mp-messages {
      left: 8px;
      right: 8px;
      /* Over the map, wherever the sheet ends. */
      top: calc(var(--tabs) + 68px);
      bottom: auto;
    }
    /* The walk has its own band above the map and its own panel below. */
    :host([data-place="round"]) mp-slips {
      display: none;
    }
    :host([data-place="round"]) mp-messages {
      top: auto;
      bottom: 92px;
    }
    :host([data-walking]) mp-messages {
      top: calc(var(--tabs) + 206px);
      bottom: auto;
    }
  }
`;
