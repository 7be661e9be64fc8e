/** Source marks of the card's rows: rows with the same sources share a number. */
import type { Row } from '../../../criteria/criterion.ts';

export interface SourceMarks {
  /** Row id → number. Rows without sources have none. */
  readonly of: ReadonlyMap<string, number>;
  /** Keys of each number, from 1. */
  readonly groups: readonly (readonly string[])[];
}

export function sourceMarks(rows: readonly Row[]): SourceMarks {
  const groups: (readonly string[])[] = [];
  const of = new Map<string, number>();
  for (const row of rows) {
    if (row.sources.length === 0) continue;
    const key = row.sources.join('|');
    let at = groups.findIndex((g) => g.join('|') === key);
    if (at < 0) at = groups.push(row.sources) - 1;
    of.set(row.id, at + 1);
  }
  return { of, groups };
}
