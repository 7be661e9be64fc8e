/** A table of plans: names left, figures right, nothing wraps but a long name. */
import { css } from 'lit';

export const planTableStyle = css`
  table {
    width: 100%;
    border-collapse: collapse;
    margin: 12px 0 4px;
  }
  th,
  td {
    padding: 7px 0 7px 8px;
    border-bottom: 1px solid var(--ring);
    text-align: right;
    white-space: nowrap;
  }
  thead th {
    font-weight: 600;
    font-size: 0.781rem;
    color: var(--quiet);
  }
  th:first-child {
    padding-left: 0;
    text-align: left;
    white-space: normal;
    overflow-wrap: anywhere;
  }
`;
