/** The undo steps of a site, kept beside it so that they survive a reload. Losing them loses no work. */
import { type History, present, push, type Step } from '../../edits/history.ts';
import { historyText, readHistory } from '../../edits/history-text.ts';
import { writeSite } from '../../site/write.ts';
import type { DurableShelf } from '../storage/durable-shelf.ts';

const keyOf = (id: string) => `history:${id}`;

export async function keepHistory(shelf: DurableShelf, id: string, history: History): Promise<void> {
  await shelf.vault.setExtra(keyOf(id), historyText(history));
}

/**
 * The kept history whose present is this text. Steps that stop before it (the window closed between the two) are gone on from
 * with `sentence`; null when there are none or they are damaged.
 */
export async function keptHistory(
  shelf: DurableShelf,
  id: string,
  text: string,
  ahead: () => Step | null,
): Promise<History | null> {
  const kept = await shelf.vault.extra<string>(keyOf(id)).catch(() => null);
  const history = typeof kept === 'string' ? readHistory(kept) : null;
  if (!history) return null;
  if (writeSite(present(history)) === text) return history;
  const next = ahead();
  return next && push(history, next.site, next.sentence);
}
