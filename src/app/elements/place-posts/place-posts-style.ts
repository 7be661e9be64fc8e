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
  .pages {
    display: flex;
    justify-content: space-between;
    gap: 8px;
    border-bottom: 1px solid var(--ring);
  }
  .pages button {
    padding: 0;
  }
  button.short {
    flex: none;
    padding: 0 10px;
    white-space: nowrap;
  }
  button.weakest {
    padding: 0 4px;
    white-space: nowrap;
  }
  .empty {
    font-size: 1rem;
    line-height: 1.45;
  }
`;
