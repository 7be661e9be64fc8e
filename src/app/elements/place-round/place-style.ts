/** The two frames of the Round: the desktop's notebook page, and the phone with the map between band and visit. */
import { css } from 'lit';

export const placeStyle = css`
  :host {
    display: flex;
    flex-direction: column;
    min-height: 0;
    height: 100%;
  }
  mp-page,
  mp-nest-key,
  mp-visit-form,
  .stack {
    flex: 1;
    min-height: 0;
    display: flex;
    flex-direction: column;
  }
  .stack > nav {
    padding: 6px 22px 0 24px;
  }
  nav {
    display: flex;
    flex-wrap: wrap;
    margin-bottom: 10px;
    border-bottom: 1px solid var(--line);
  }
  nav button {
    border: 0;
    border-radius: 0;
    background: none;
    flex: 1 1 auto;
    padding: 0 4px;
    font: 600 0.84rem / 1 var(--sans);
  }
  nav button[aria-current="page"] {
    box-shadow: inset 0 -3px 0 var(--rust);
    font-weight: 700;
  }
  .what {
    font: 700 1.0625rem / 1.25 var(--serif);
  }
  mp-visit-choices {
    display: block;
    margin-top: 8px;
  }
  summary {
    font: 700 0.969rem / 1.25 var(--serif);
    cursor: pointer;
    min-height: 44px;
    padding: 12px 0;
  }
  .awake {
    display: flex;
    align-items: center;
    gap: 10px;
    min-height: 48px;
  }
  .awake input {
    min-height: 0;
    width: 24px;
    height: 24px;
  }
  .panel {
    padding: 8px 12px 10px;
  }
  .foot {
    display: flex;
    gap: 8px;
    padding: 10px 12px calc(12px + env(safe-area-inset-bottom));
    border-top: var(--rule) solid var(--ink);
    background: var(--raised);
  }
  .foot button {
    min-height: 64px;
    flex: 1 1 30%;
    font-size: 1.06rem;
    padding: 0 8px;
  }
  .foot .filled {
    flex: 2 1 60%;
    font: 700 1.3rem / 1.1 var(--serif);
  }
  @media (max-width: 719px) {
    :host {
      height: auto;
      max-height: calc(100dvh - var(--tabs, 56px) - 2px);
    }
    :host([full]) {
      height: calc(100dvh - var(--tabs, 56px) - 2px);
    }
    @container (max-width: 18rem) {
      :host,
      :host([full]) {
        height: auto;
        max-height: none;
      }
      .foot {
        flex-wrap: wrap;
      }
    }
    .panel {
      overflow-y: auto;
    }
    .panel p {
      font-size: 1.0625rem;
      line-height: 1.3;
      padding: 2px 4px;
    }
    .stack > nav {
      padding: 0 16px;
    }
    nav {
      flex-wrap: nowrap;
      overflow-x: auto;
      scrollbar-width: none;
    }
    summary {
      min-height: 56px;
      padding: 18px 0;
    }
    nav button {
      flex: 1 0 auto;
      font-size: 0.94rem;
      padding: 0 5px;
    }
    button[slot="foot"] {
      min-height: 64px;
      font-size: 1.06rem;
    }
    button[slot="foot"].filled {
      font: 700 1.3rem / 1.1 var(--serif);
    }
  }
`;
