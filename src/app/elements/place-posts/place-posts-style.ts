/** Styles of the Posts place. */
import { css } from 'lit';

export const placePostsStyle = css`
  .proof {
    margin: 4px 0 10px;
  }
  .ways {
    display: flex;
    justify-content: space-between;
    margin: -6px 0 0;
  }
  .ways button {
    padding: 0;
    font-size: 0.781rem;
  }
  details {
    margin-top: 14px;
  }
  summary {
    font: 700 0.969rem / 1.25 var(--serif);
    cursor: pointer;
    min-height: 44px;
    padding: 10px 0;
  }
  details li {
    border-bottom: 1px solid var(--ring);
  }
  button.row {
    width: 100%;
    padding: 4px 0;
    border: 0;
    border-radius: 0;
    background: none;
    text-align: left;
    font-weight: 400;
    font-size: 0.781rem;
  }
  .empty {
    font-size: 1rem;
    line-height: 1.45;
  }
`;
