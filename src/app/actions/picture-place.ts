/** Laying a picture down: its corners by hand, or control points with what is left at each. */
import {
  fitAffine,
  fitSimilarity,
  isFitted,
  leastControlPoints,
  type NoFit,
  type PictureFit,
  pictureCorners,
} from '../../exchange/control-points.ts';
import { makeFrame } from '../../ground/frame.ts';
import type { LonLat } from '../../site/types.ts';
import type { Corners, Fitting, PlacedPicture, Tie } from '../picture-state.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { changePicture, setPictures } from './picture-state.ts';

/** The placed picture of this id; null when there is none. */
export function placedPicture({ pictures }: AppState, id: string | undefined): PlacedPicture | null {
  const found = pictures.list.find((one) => one.id === id);
  return found?.kind === 'placed' ? found : null;
}

export function moveCorners(store: Store, id: string, on: boolean): void {
  setPictures(store, { tool: on ? { does: 'corners', id, corner: 0 } : null });
}

/** Puts one corner somewhere; a picture moved by hand no longer follows its control points. */
export function moveCorner(store: Store, id: string, index: number, at: LonLat, last: boolean): void {
  const picture = placedPicture(store.state, id);
  if (!picture) return;
  const corners = picture.corners.map((corner, i) => (i === index ? at : corner)) as unknown as Corners;
  changePicture<PlacedPicture>(store, id, { corners }, last);
}

export function tiePoints(store: Store, id: string, on: boolean): void {
  setPictures(store, { tool: on ? { does: 'tie', id, pixel: null } : null });
}

/** A place pressed in the picture: the next press on the map is where it lies. */
export function pressPixel(store: Store, id: string, pixel: readonly [number, number]): void {
  setPictures(store, { tool: { does: 'tie', id, pixel } });
}

export function addTie(store: Store, id: string, tie: Tie): void {
  const picture = placedPicture(store.state, id);
  if (!picture) return;
  setTies(store, picture, [...picture.ties, tie], picture.fitting);
  setPictures(store, { tool: { does: 'tie', id, pixel: null } });
}

export function removeTie(store: Store, id: string, index: number): void {
  const picture = placedPicture(store.state, id);
  if (picture)
    setTies(
      store,
      picture,
      picture.ties.filter((_, i) => i !== index),
      picture.fitting,
    );
}

export function setFitting(store: Store, id: string, fitting: Fitting): void {
  const picture = placedPicture(store.state, id);
  if (picture) setTies(store, picture, picture.ties, fitting);
}

/** The fit of a picture's points, in a frame at the first of them; null with fewer than three. */
export function fitOf(ties: readonly Tie[], fitting: Fitting): PictureFit | NoFit | null {
  const first = ties[0];
  if (!first || ties.length < leastControlPoints) return null;
  const frame = makeFrame(first.ground);
  const points = ties.map(({ pixel: [x, y], ground }) => ({ picture: { x, y }, ground: frame.toPlane(ground) }));
  return fitting === 'affine' ? fitAffine(points) : fitSimilarity(points);
}

function setTies(store: Store, picture: PlacedPicture, ties: readonly Tie[], fitting: Fitting): void {
  const fit = fitOf(ties, fitting);
  const corners =
    fit && isFitted(fit) ? pictureCorners(fit, picture.width, picture.height, makeFrame(ties[0]!.ground)) : null;
  changePicture<PlacedPicture>(store, picture.id, { ties, fitting, ...(corners ? { corners } : {}) });
}
