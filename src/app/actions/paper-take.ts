/** Taking the paper away: printed, as a PDF, as a picture, or as a file for another program. */

import { picturePng, pictureSvg } from '../paper/picture.ts';
import type { PlanFile } from '../paper/plan-files.ts';
import { pressOf } from '../paper/press.ts';
import { layPages, loadLetters } from '../paper/print-pages.ts';
import { fileName, saveFile } from '../paper/save-file.ts';
import type { Store } from '../store.ts';
import { drawSheets, isDrawn, questionOf, sentenceOf, setPaper } from './paper-draw.ts';
import { say } from './say.ts';

/** Writes the PDF of the sheets shown and hands it over. */
export async function takePdf(store: Store): Promise<void> {
  if (store.state.paper.at === 'writing') return;
  setPaper(store, { at: 'writing', trouble: null });
  try {
    const question = await questionOf(store);
    if (!question) return;
    const bytes = await pressOf(store).call('pdf', question);
    give(store, '.pdf', 'application/pdf', bytes as BlobPart);
  } catch (error) {
    setPaper(store, { trouble: sentenceOf(error) });
  } finally {
    setPaper(store, { at: 'rest' });
    if (!isDrawn(store.state)) void drawSheets(store);
  }
}

/** Opens the browser's own printing; the pages are laid out by `printing`. */
export async function printSheets(): Promise<void> {
  await loadLetters();
  window.print();
}

/** Lays the sheets out whenever the browser prints, by our button or by its own key, until the returned function is called. */
export function printing(store: Store): () => void {
  let clear: (() => void) | null = null;
  const before = (): void => {
    clear?.();
    const { drawn } = store.state.paper;
    clear = drawn ? layPages(drawn.sheets) : null;
  };
  const after = (): void => {
    clear?.();
    clear = null;
  };
  addEventListener('beforeprint', before);
  addEventListener('afterprint', after);
  return () => {
    after();
    removeEventListener('beforeprint', before);
    removeEventListener('afterprint', after);
  };
}

/** The sheet shown large as a picture. */
export async function takePicture(store: Store, as: 'svg' | 'png'): Promise<void> {
  const { drawn, shown } = store.state.paper;
  const sheet = drawn?.sheets[shown];
  if (!sheet) return;
  try {
    if (as === 'svg') give(store, `-${sheet.id}.svg`, 'image/svg+xml', await pictureSvg(sheet));
    else give(store, `-${sheet.id}.png`, 'image/png', await picturePng(sheet));
  } catch (error) {
    setPaper(store, { trouble: sentenceOf(error) });
  }
}

/** The plan in one of its file formats. */
export function takeFile(store: Store, file: PlanFile): void {
  const { plan, planOf } = store.state;
  if (plan && planOf) give(store, file.ending, file.type, file.write(plan, planOf));
}

function give(store: Store, ending: string, type: string, body: BlobPart): void {
  const { planOf, words } = store.state;
  const name = fileName(planOf?.settings.name ?? '', ending);
  saveFile(name, type, body);
  say(store, 'tell', words.paper.given(name));
}
