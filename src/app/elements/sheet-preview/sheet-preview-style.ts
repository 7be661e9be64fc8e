/** On a desktop the sheets lie on a desk beside the notebook; on a phone they are the top of the page. */
import { css } from 'lit';

export const sheetPreviewStyle = css`
  :host {
    display: flex;
    flex-direction: column;
    gap: 8px;
  }
  * {
    box-sizing: border-box;
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 8px;
  }
  .head p {
    flex: 1 1 auto;
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .head .name {
    font: 700 1.125rem / 1.2 var(--serif);
  }
  .stage {
    position: relative;
    min-height: 0;
    overflow: auto;
    display: grid;
    place-items: center;
    scrollbar-width: thin;
    scrollbar-color: var(--line) transparent;
  }
  .stage.large {
    place-items: start;
  }
  .sheet {
    background: #ffffff;
    border: 1px solid var(--line);
    line-height: 0;
    max-width: 100%;
  }
  .sheet svg {
    display: block;
    width: 100%;
    height: 100%;
  }
  .large .sheet {
    max-width: none;
  }
  .old {
    opacity: 0.45;
  }
  .strip {
    display: flex;
    gap: 8px;
    overflow: auto hidden;
    padding: 5px;
    scrollbar-width: thin;
    scrollbar-color: var(--line) transparent;
    position: relative;
  }
  .strip > div {
    flex: none;
    min-width: 56px;
    padding: 3px;
    border: var(--rule) solid transparent;
    border-radius: 3px;
    text-align: center;
    cursor: pointer;
    font-size: 0.75rem;
    line-height: 1.3;
  }
  .strip > [aria-selected="true"] {
    border-color: var(--ink);
    background: var(--raised);
    font-weight: 600;
  }
  .strip img {
    display: block;
    height: 72px;
    margin: 0 auto 2px;
    background: #ffffff;
    outline: 1px solid var(--line);
  }
  @media (min-width: 720px) {
    :host {
      position: fixed;
      inset: 0 0 0 calc(var(--notebook, 400px) + 16px);
      padding: 16px 16px 8px 24px;
      background: color-mix(in srgb, var(--ring) 45%, var(--paper));
      font-size: 0.859rem;
    }
    .stage {
      flex: 1;
      container-type: size;
      padding: 2px;
    }
    .stage:not(.large) .sheet {
      /* As large as the stage allows, both ways. */
      width: min(calc(100cqw - 4px), calc((100cqh - 8px) * var(--shape)));
      box-shadow: 0 3px 12px rgb(0 0 0 / 0.22);
    }
  }
  @media (max-width: 719px) {
    .head p {
      flex-basis: 100%;
    }
    .stage {
      max-height: 62vh;
    }
    .sheet {
      width: 100%;
    }
    .strip > div {
      min-width: 64px;
      font-size: 0.875rem;
    }
  }
`;
