/** Styles of the card. */
import { css } from 'lit';

export const postCardStyle = css`
  .head {
    display: grid;
    grid-template-columns: 1fr auto;
    gap: 8px 12px;
    padding-right: 12px;
  }
  .name {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 10px;
  }
  .head,
  .line,
  .facing {
    overflow-wrap: anywhere;
  }
  .head p {
    margin-top: 2px;
    line-height: 1.3;
  }
  mp-score-disc {
    padding-top: 6px;
  }
  .wash {
    margin: 10px 0 6px;
  }
  .strong {
    margin: 8px 0 2px;
  }
  .wash strong {
    color: var(--rust);
  }
  section {
    margin-top: 10px;
  }
  .line {
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    gap: 8px;
    margin-bottom: 4px;
  }
  .grade {
    font-weight: 600;
  }
  .HIGH {
    color: var(--rust);
  }
  .facing {
    display: grid;
    grid-template-columns: 112px 1fr;
    gap: 14px;
    align-items: center;
  }
  .facing h2 {
    margin-bottom: 2px;
  }
  .flags li {
    padding-left: 14px;
    text-indent: -14px;
  }
  .flags li::before {
    content: "– ";
  }
  mp-source-foot {
    margin-top: 12px;
  }
  details summary {
    cursor: pointer;
    min-height: 24px;
  }
`;
