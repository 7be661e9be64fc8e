/** Short hands for the trouble list of a file. */
import type { Issue, LonLat, Severity } from '../site/types.ts';

/** An issue of the whole file, or of one thing in it when `feature` ("wpt 3") is given. */
export function fileIssue(
  severity: Severity,
  id: string,
  sentence: string,
  fix: string,
  feature: string | null = null,
  place: LonLat | null = null,
): Issue {
  return { id, severity, feature, place, sentence, fix };
}

/** "1 place", "2 places". */
export function count(number: number, one: string, many = `${one}s`): string {
  return `${number.toLocaleString('en-US')} ${number === 1 ? one : many}`;
}
