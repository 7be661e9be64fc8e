/** Photos of a visit: made small enough to keep, and kept on this device only. */
import type { Store } from '../store.ts';
import { changeDraft } from './round.ts';
import { say } from './say.ts';
import { logOf } from './visit-log.ts';

/** Longer side of a kept photo, px, and its JPEG quality (ours: eggs stay countable, 40 photos take about 15 MB). */
const longest = 1600;
const quality = 0.85;

/** Keeps the photo and names it in the open draft; says why when it cannot, the visit stays as it was. */
export async function keepPhoto(store: Store, file: Blob): Promise<void> {
  const { draft } = store.state.round;
  if (!draft) return;
  const name = `photo-${crypto.randomUUID()}.jpg`;
  try {
    await (await logOf(store)).addPhoto(name, await smaller(file));
    if (store.state.round.draft?.post === draft.post) changeDraft(store, { photo: name });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    say(store, 'trouble', store.state.words.round.visit.photoFailed(why));
  }
}

async function smaller(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file).catch(() => {
    throw new Error('this is no picture the browser can read');
  });
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
  const canvas = new OffscreenCanvas(Math.round(picture.width * scale), Math.round(picture.height * scale));
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return canvas.convertToBlob({ type: 'image/jpeg', quality });
}
