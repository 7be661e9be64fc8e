/** Styles of the Posts place. */
import { css } from 'lit';

export const placePostsStyle = css`
  .proof {
    margin: 4px 0 10px;
  }
  .ways {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 12px;
    margin: -6px 0 0;
  }
  .ways button {
    padding: 0;
    font-size: 0.781rem;
  }
  .pages {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 12px;
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
