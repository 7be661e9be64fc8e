/** Keys that work anywhere in the window. Each has a button too. */
import { redo, undo } from '../../actions/edit.ts';
import { takeNudge } from '../../actions/nudge.ts';
import { select } from '../../actions/select.ts';
import { downloadSite } from '../../actions/shelf-file.ts';
import type { Store } from '../../store.ts';

/** Ctrl or Command Z, Shift Z and Y undo and redo, S saves to a file; Escape closes the card, N takes the better place near the open box. True when the key was used. Keys typed into a field are the field's. */
export function runKey(store: Store, event: KeyboardEvent): boolean {
  if (event.defaultPrevented || isTyping(event)) return false;
  const key = event.key.toLowerCase();
  if (key === 'escape' && store.state.selection) {
    select(store, null);
    return true;
  }
  const plain = !(event.ctrlKey || event.metaKey || event.altKey);
  if (key === 'n' && plain && store.state.place === 'posts') return takeNudge(store);
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return false;
  if (key === 's') void saveSite(store);
  else if (key === 'z') (event.shiftKey ? redo : undo)(store);
  else if (key === 'y') redo(store);
  else return false;
  return true;
}

/** To the site's own file, where the browser can; as a download elsewhere. What is kept in the browser saves itself. */
async function saveSite(store: Store): Promise<void> {
  const { canWriteFiles, saveToFile } = await import('../../actions/own-file.ts');
  await (canWriteFiles() ? saveToFile(store) : downloadSite(store));
}

function isTyping(event: KeyboardEvent): boolean {
  const target = event.composedPath()[0];
  return (
    target instanceof HTMLElement &&
    (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName))
  );
}
