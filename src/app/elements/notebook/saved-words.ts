/** What stands beside the site's name: it never says "saved" before it is. */
import type { Saved } from '../../state.ts';
import type { Words } from '../../words/en.ts';

export function savedWords(saved: Saved, words: Words): string {
  const said = words.shell.saved;
  if (saved.at === 'saved') {
    const time = new Date(saved.time);
    const two = (n: number) => String(n).padStart(2, '0');
    return said.saved(`${two(time.getHours())}:${two(time.getMinutes())}`);
  }
  return saved.at === 'failed' ? said.failed(saved.why) : said[saved.at];
}
