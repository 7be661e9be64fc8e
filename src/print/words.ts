/** English words for the rows of a key; a caller may pass its own. */

/** Key of a legend row → words. */
export type KeyWords = Readonly<Record<string, string>>;

/** Where it is not the key itself with spaces for dashes. */
const own: KeyWords = {
  meadow: 'tall meadow',
  path: 'path',
  'off-limits': 'off-limits',
  boundary: 'site edge',
  'overhead-wire': 'overhead wire',
};

/** Words for a legend row or kind. */
export function keyWord(key: string, words: KeyWords = {}): string {
  return words[key] ?? own[key] ?? key.replaceAll('-', ' ');
}
