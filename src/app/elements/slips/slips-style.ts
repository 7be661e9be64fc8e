/** Loose slips of paper on the map: at most four. */
import { css } from 'lit';

export const slipsStyle = css`
  /* The upper and the lower edge of the map: a row of slips, and what opens from it toward the middle. Rows wrap where letters are large. */
  .edge {
    position: absolute;
    left: 0;
    right: 16px;
    display: flex;
    align-items: flex-end;
    gap: 8px;
  }
  .edge.top {
    top: 16px;
    flex-direction: column;
  }
  .edge.below {
    bottom: 16px;
    flex-direction: column-reverse;
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    align-items: flex-end;
    gap: 8px 16px;
  }
  .slip {
    display: flex;
    align-items: stretch;
    background: var(--paper);
    border: var(--rule) solid var(--ink);
    border-radius: 3px;
    pointer-events: auto;
  }
  .slip button {
    border: 0;
    border-radius: 0;
    background: none;
    min-height: 44px;
  }
  .slip > * + * {
    border-left: 1px solid var(--line);
  }
  .slip .label {
    display: grid;
    place-content: center;
    padding: 0 12px;
    font: italic 400 0.9375rem / 1 var(--serif);
    color: var(--quiet);
  }
  .ground button[aria-pressed="true"] {
    box-shadow: inset 0 -4px 0 var(--rust);
    font-weight: 700;
  }
  .slip.lie {
    display: block;
    margin: -8px 200px 0 0;
    width: clamp(338px, 21.1rem, 100% - 200px);
  }
  mp-scale {
    pointer-events: auto;
  }
  .panel {
    width: clamp(288px, 18rem, 100%);
    max-height: calc(100cqh - 10rem);
    overflow: auto;
    padding: 12px 16px;
    background: var(--paper);
    border: var(--rule) solid var(--ink);
    border-radius: 3px;
    pointer-events: auto;
  }
  .panel.photo {
    width: clamp(340px, 21.25rem, 100%);
    max-height: calc(100cqh - 9.4rem);
  }
  .credit {
    position: absolute;
    right: 16px;
    bottom: 0;
    max-width: 60%;
    padding: 0 4px;
    background: color-mix(in srgb, var(--paper) 85%, transparent);
    font-size: 0.719rem;
    pointer-events: none;
    overflow-wrap: anywhere;
  }
  .panel h2 {
    margin-bottom: 8px;
  }
  .choice {
    display: flex;
    align-items: stretch;
    margin-top: 10px;
    border: 1px solid var(--line);
    border-radius: 5px;
  }
  .choice .label {
    flex: 1;
    align-self: center;
    padding: 0 10px;
    font: italic 400 0.9375rem / 1 var(--serif);
    color: var(--quiet);
  }
  .choice button {
    border: 0;
    border-left: 1px solid var(--line);
    border-radius: 0;
    padding: 0 9px;
    background: none;
  }
  .choice button[aria-pressed="true"] {
    box-shadow: inset 0 -4px 0 var(--rust);
    font-weight: 700;
  }
  .cross {
    display: grid;
    grid-template-columns: repeat(3, 1fr);
    gap: 4px;
  }
  .cross button {
    border: 1px solid var(--line);
    border-radius: 5px;
    padding: 0 6px;
  }
  .cross .north {
    grid-column: 2;
  }
  .cross .west {
    grid-column: 1;
    grid-row: 2;
  }
  .cross .whole {
    grid-row: 2;
    grid-column: 2;
  }
  .cross .east {
    grid-row: 2;
    grid-column: 3;
  }
  .cross .south {
    grid-row: 3;
    grid-column: 2;
  }
  svg {
    width: 20px;
    height: 20px;
    margin-right: 8px;
    vertical-align: -5px;
    fill: none;
    stroke: currentColor;
    stroke-width: 1.7;
    stroke-linecap: round;
    stroke-linejoin: round;
  }
  @media (max-width: 1099px) {
    .ground .label {
      display: none;
    }
    .edge.below .row {
      flex-direction: column;
    }
    .panel,
    .panel.photo {
      max-height: calc(100cqh - 13.3rem);
    }
  }
  .phone {
    display: none;
  }
  .choices {
    display: grid;
    gap: 4px;
  }
  .choices button {
    text-align: left;
  }
  .choices button[aria-pressed="true"] {
    border-left: 6px solid var(--rust);
  }
  @media (max-width: 719px) {
    .ground,
    .history {
      display: none;
    }
    .edge {
      left: 8px;
      right: 8px;
      align-items: stretch;
    }
    .edge.top {
      top: 66px;
    }
    .edge.below {
      top: 8px;
      bottom: auto;
      flex-direction: column;
    }
    .edge.below .row {
      display: contents;
    }
    .slip.lie {
      margin: 0;
      width: auto;
    }
    /* Its buttons take two rows. */
    @container (max-width: 18rem) {
      .edge.top {
        top: 118px;
      }
    }
    .tools {
      flex-wrap: wrap;
    }
    .tools button {
      flex: 1 1 auto;
      min-width: 0;
      min-height: 48px;
      padding: 0 4px;
      font-size: 0.9375rem;
    }
    .tools svg {
      display: none;
    }
    .phone {
      display: block;
    }
    mp-scale {
      position: fixed;
      left: 8px;
      bottom: calc(46vh + 8px);
      max-width: calc(100vw - 16px);
    }
    .panel.photo {
      width: auto;
      max-height: 44vh;
    }
    .credit {
      bottom: calc(46vh + 2px);
    }
    .panel {
      position: relative;
      width: auto;
      max-height: 40vh;
      z-index: 3;
    }
  }
`;
