/** What the shown photos under the drawing need in the field. */
import type { GroundPicture } from '../picture-state.ts';
import type { PictureShelf } from '../storage/picture-shelf.ts';
import type { PictureFacts } from './ready.ts';

/** Asks the shelf for every kept one: a picture in the list whose bytes are gone is told as lost. */
export async function pictureFacts(list: readonly GroundPicture[], shelf: PictureShelf): Promise<PictureFacts> {
  const shown = list.filter((one) => one.shown);
  const placed = shown.filter((one) => one.kind === 'placed');
  const found = await Promise.all(placed.map(({ id }) => shelf.bytes(id).catch(() => null)));
  const kept = found.filter((bytes) => bytes !== null);
  return {
    kept: kept.length,
    bytes: kept.reduce((sum, { size }) => sum + size, 0),
    lost: placed.length - kept.length,
    servers: shown.flatMap((one) => (one.kind === 'served' && one.agreed ? [one.source.host] : [])),
    files: shown.flatMap((one) => (one.kind === 'tiles' ? [one.name] : [])),
  };
}
