/** Large figures for a bright day. On a phone the band lies under the tabs, over the map. */
import { css } from 'lit';

export const wayStyle = css`
  .band {
    background: var(--paper);
  }
  .progress {
    display: flex;
    align-items: center;
    gap: 10px;
    width: 100%;
    min-height: 44px;
    padding: 0;
    border: 0;
    background: none;
    font-weight: 400;
    font-size: 0.95rem;
  }
  .dots {
    flex: 1;
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    gap: 2.5px;
  }
  .dots i {
    width: 7px;
    height: 7px;
    border-radius: 50%;
    border: 1.5px solid var(--ink);
  }
  .dots i.seen,
  .dots i.done {
    background: var(--ink);
  }
  .dots i.skipped {
    border-style: dotted;
  }
  .dots i.here {
    outline: 2.5px solid var(--sky);
    outline-offset: 1px;
    margin: 0 3px;
  }
  .open {
    font-weight: 600;
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  .line {
    display: flex;
    align-items: baseline;
    justify-content: space-between;
    gap: 12px;
  }
  h1 {
    white-space: nowrap;
  }
  .far {
    font: 700 2rem / 1 var(--serif);
    color: var(--sky);
    white-space: nowrap;
  }
  .far.told {
    color: var(--ink);
  }
  .second {
    flex-wrap: wrap;
    gap: 0 12px;
    white-space: nowrap;
    margin-top: 3px;
  }
  .way {
    white-space: nowrap;
    font-weight: 600;
    text-align: right;
  }
  .from {
    font-weight: 400;
  }
  .trust {
    margin-top: 4px;
    font-weight: 600;
  }
  .care {
    color: var(--rust);
  }
  button.trust {
    width: 100%;
  }
  .slip {
    display: flex;
    align-items: center;
    gap: 8px;
    margin-top: 8px;
  }
  .slip svg {
    flex: none;
  }
  .slip circle {
    fill: var(--raised);
    stroke: var(--ink);
    stroke-width: 2;
  }
  .slip .north {
    fill: var(--rust);
  }
  .slip .arrow {
    fill: var(--sky);
  }
  @media (max-width: 719px) {
    .top {
      position: fixed;
      z-index: 3;
      top: var(--tabs, 56px);
      left: 0;
      right: 0;
      pointer-events: none;
    }
    .band {
      padding: 0 16px 8px;
      border-bottom: var(--rule) solid var(--ink);
      pointer-events: auto;
    }
    h1 {
      font-size: 2.625rem;
      line-height: 1;
    }
    .far {
      font-size: 2.875rem;
    }
    .slip {
      margin: 8px 8px 0;
    }
    .slip p {
      max-width: 150px;
      font-size: 0.875rem;
      line-height: 1.15;
      font-weight: 600;
      padding: 3px 7px;
      border-radius: 3px;
      background: color-mix(in srgb, var(--paper) 88%, transparent);
    }
    .slip button {
      pointer-events: auto;
    }
    button,
    .progress {
      min-height: 56px;
    }
  }
  @media (max-width: 719px) and (max-height: 620px) {
    .top {
      position: static;
    }
  }
  @media (max-width: 719px) {
    @container (max-width: 18rem) {
      .top {
        position: static;
      }
      .line {
        flex-wrap: wrap;
        white-space: normal;
      }
      .way {
        white-space: normal;
        text-align: left;
      }
    }
  }
`;
