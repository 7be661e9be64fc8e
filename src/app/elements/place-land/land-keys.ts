/** Keys of the Land place: a shape in progress is finished, taken back or given up. Typing in a field is left alone. */
import { finishShape, giveUp, putCornerAgain, takeCornerBack, takeTool } from '../../actions/land-draw.ts';
import { choose, chooseCorner, setLand } from '../../actions/land-state.ts';
import { deleteCorner } from '../../actions/land-tools.ts';
import { draws } from '../../map/drawing/sketch.ts';
import type { Store } from '../../store.ts';

/** Does what the key means; the key is then spent. */
export function landKey(store: Store, event: KeyboardEvent): void {
  if (event.defaultPrevented || isTyping(event)) return;
  const done = historyKey(store, event) || (store.state.land.tool ? draftKey(store, event) : chosenKey(store, event));
  if (done) event.preventDefault();
}

function isTyping(event: KeyboardEvent): boolean {
  const target = event.composedPath()[0];
  if (!(target instanceof HTMLElement)) return false;
  const field = target.matches('input:not([type=checkbox],[type=radio]), select, textarea, [contenteditable]');
  return field && event.key !== 'Escape';
}

/** Ctrl or Cmd with Z, Shift+Z, Y inside a shape: its corners. Without any they are the whole site's, which the frame knows. */
function historyKey(store: Store, event: KeyboardEvent): boolean {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return false;
  const key = event.key.toLowerCase();
  const back = key === 'z' && !event.shiftKey;
  const again = key === 'y' || (key === 'z' && event.shiftKey);
  const { corners, takenBack } = store.state.land;
  if (back && corners.length > 0) takeCornerBack(store);
  else if (again && takenBack.length > 0) putCornerAgain(store);
  else return false;
  return true;
}

function draftKey(store: Store, event: KeyboardEvent): boolean {
  const onButton =
    event.composedPath()[0] instanceof HTMLButtonElement ||
    (event.composedPath()[0] as Element).matches?.('summary, input');
  const points = draws(store.state.land.tool) === 'point';
  if (event.key === 'Escape') giveUp(store);
  else if (event.key === 'Backspace') takeCornerBack(store);
  else if (event.key === 'Enter' && !onButton) points ? takeTool(store, null) : finishShape(store);
  else return false;
  return true;
}

function chosenKey(store: Store, event: KeyboardEvent): boolean {
  const { selection, land } = store.state;
  if (event.key === 'Escape' && land.cross) setLand(store, { cross: false });
  else if (event.key === 'Escape' && land.corner) chooseCorner(store, null);
  else if (event.key === 'Escape' && selection) choose(store, null);
  else if (event.key === 'Delete' && land.corner) deleteCorner(store);
  else return false;
  return true;
}
