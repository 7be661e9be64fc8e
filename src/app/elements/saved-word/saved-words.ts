/** What stands beside the site's name: it never says "saved" before it is. */
import type { KeepingState } from '../../keeping-state.ts';
import type { Saved } from '../../state.ts';
import type { Words } from '../../words/en.ts';
import { clock } from './when.ts';

/** One sentence without a full stop. */
export function savedWords(saved: Saved, keeping: KeepingState, words: Words): string {
  const { library, shell } = words;
  if (keeping.mode === 'other-window') return library.saved.looking;
  if (keeping.mode === 'differ') return library.saved.differ;
  if (keeping.mode === 'newer') return library.saved.newer;
  if ((saved.at === 'never' || saved.at === 'saved') && keeping.where === 'window') return library.saved.window;
  if (saved.at === 'saved') {
    const time = clock(saved.time);
    return keeping.exported === null ? library.saved.hereOnly(time) : shell.saved.saved(time);
  }
  if (saved.at === 'failed') return shell.saved.failed(saved.why);
  return shell.saved[saved.at];
}
