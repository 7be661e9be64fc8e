/** The stitched page with five tabs. */
import { css } from 'lit';

export const notebookStyle = css`
  :host {
    display: flex;
    flex-direction: column;
  }
  .tabs {
    display: flex;
    gap: 3px;
    align-items: flex-end;
    flex-wrap: wrap;
    min-height: 44px;
    position: relative;
    z-index: 1;
  }
  .tabs button {
    flex: 1 1 auto;
    height: 44px;
    min-height: 44px;
    padding: 0 4px;
    border: var(--rule) solid var(--ink);
    border-radius: 7px 7px 0 0;
    background: color-mix(in srgb, var(--ring) 55%, var(--paper));
    font: 700 0.969rem / 1 var(--serif);
  }
  .tabs button[aria-selected="true"] {
    height: 50px;
    margin-bottom: -1.5px;
    border-top: 4px solid var(--rust);
    border-bottom-color: var(--paper);
    background: var(--paper);
  }
  .tabs button:active {
    translate: none;
  }
  .page {
    flex: 1;
    min-height: 0;
    display: flex;
    flex-direction: column;
    position: relative;
    border: var(--rule) solid var(--ink);
    border-radius: 0 0 4px 4px;
    background: var(--paper);
    box-shadow: 0 6px 18px rgb(0 0 0 / 0.22);
  }
  .page::before {
    content: "";
    position: absolute;
    left: 9px;
    top: 0;
    bottom: 0;
    border-left: 1.5px dashed var(--line);
    z-index: 1;
    pointer-events: none;
  }
  header {
    display: grid;
    grid-template-columns: 1fr auto;
    gap: 0 8px;
    align-items: center;
    padding: 3px 10px 3px 24px;
    border-bottom: 1px solid var(--line);
    position: relative;
  }
  header h2 {
    overflow-wrap: anywhere;
    align-self: end;
  }
  header mp-saved-word {
    grid-row: 2;
    align-self: start;
    line-height: 1.2;
  }
  .ends {
    grid-row: 1 / 3;
    grid-column: 2;
    display: flex;
    align-items: center;
    gap: 4px;
  }
  @media (max-width: 719px) {
    .ends {
      flex-wrap: wrap;
      justify-content: end;
    }
  }
  .ends .sites {
    padding: 0 10px;
  }
  .progress,
  .issues {
    grid-column: 1 / 3;
  }
  .issues {
    justify-self: start;
  }
  .progress {
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: 8px;
  }
  .progress button {
    min-height: 44px;
    padding: 0 8px;
  }
  .issues {
    padding: 0;
    color: var(--rust);
  }
  .bar {
    position: absolute;
    left: 0;
    bottom: -1.5px;
    height: 3px;
    background: var(--sky);
    transition: width 160ms ease-out;
  }
  .trouble {
    margin: 8px 22px 0 24px;
  }
  .place {
    flex: 1;
    min-height: 0;
    display: flex;
  }
  .place > * {
    flex: 1;
    min-width: 0;
  }
  .heights {
    display: none;
  }
  @media (max-width: 719px) {
    :host {
      justify-content: space-between;
    }
    .tabs {
      height: auto;
      min-height: 56px;
      padding: 6px 4px 0;
      gap: 2px;
      background: color-mix(in srgb, var(--ring) 55%, var(--paper));
      border-bottom: var(--rule) solid var(--ink);
      pointer-events: auto;
    }
    .tabs button {
      min-width: 0;
      overflow-wrap: anywhere;
      height: auto;
      min-height: 50px;
      font-size: 1rem;
    }
    .tabs button[aria-selected="true"] {
      height: auto;
      min-height: 52px;
    }
    .page {
      flex: none;
      height: 46%;
      border-width: var(--rule) 0 0;
      border-radius: 0;
      pointer-events: auto;
    }
    .page[data-height="name"] {
      height: auto;
    }
    .page[data-height="name"] .place {
      display: none;
    }
    .page[data-height="full"] {
      height: calc(100% - var(--tabs));
    }
    .page::before {
      display: none;
    }
    header {
      grid-template-columns: minmax(40%, 1fr) auto;
      padding: 4px 8px 4px 16px;
    }
    header h2 {
      font-size: 1.05rem;
    }
    .heights {
      display: flex;
      gap: 4px;
    }
    .heights button {
      min-height: 48px;
      padding: 0 10px;
    }
    .trouble {
      margin: 8px 16px 0;
    }
    /* In the field the sheet is the walk's own: one box a screen. */
    .page[data-place="round"] {
      height: auto;
      max-height: calc(100% - var(--tabs));
    }
    .page[data-place="round"] header {
      display: none;
    }
    .page[data-place="round"] .place {
      display: flex;
    }
    /* Few letters to a line: the sheet has the window to itself, and all of it scrolls. */
    @container (max-width: 18rem) {
      .page:not([data-height="name"]),
      .page[data-place="round"] {
        display: block;
        flex: 1;
        height: auto;
        max-height: none;
        min-height: 0;
        overflow-y: auto;
      }
      .page:not([data-height="name"]) .place,
      .page[data-place="round"] .place {
        display: block;
      }
      .page[data-height="card"] .taller {
        display: none;
      }
      header {
        grid-template-columns: 1fr;
      }
      .ends {
        grid-row: auto;
        grid-column: 1;
        justify-content: start;
      }
    }
  }
  @media (prefers-reduced-motion: reduce) {
    .bar {
      transition: none;
    }
  }
`;
