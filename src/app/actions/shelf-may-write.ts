/** Whether this window may change the open site. */
import type { Store } from '../store.ts';
import { say } from './say.ts';
import { showPage } from './shelf-page.ts';

/** False when another window writes it or a newer program made it: then it is said, with the way out. */
export function mayWrite(store: Store): boolean {
  const { keeping, words } = store.state;
  if (keeping.mode === 'write') return true;
  const { library } = words;
  const run = () => store.keeper?.hooks.takeOver();
  if (keeping.mode === 'differ')
    say(store, 'trouble', library.readOnlyDiffer, {
      word: library.recovery.look,
      run: () => showPage(store, 'recovery'),
    });
  else if (keeping.mode === 'newer') say(store, 'trouble', library.readOnlyNewer);
  else say(store, 'trouble', library.readOnly, { word: library.takeOver, run });
  return false;
}
