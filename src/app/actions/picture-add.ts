/** Pictures on their way under the drawing: an address, a PMTiles file, a picture or scan, a GeoTIFF. */
import { readTilePack } from '../../exchange/pmtiles-in.ts';
import { readPictureSource } from '../../exchange/url-template.ts';
import { makeFrame } from '../../ground/frame.ts';
import type { LonLat } from '../../site/types.ts';
import { siteBounds } from '../map/bounds.ts';
import type { FreeSpot } from '../map/pictures/free-spot.ts';
import type { Corners, PlacedPicture } from '../picture-state.ts';
import type { Store } from '../store.ts';
import { addPicture, changePicture, picturesOf, readPictures, setPictures } from './picture-state.ts';
import { say } from './say.ts';

/** Largest file read, megabytes, and longest side kept, pixels (ours: what every graphics card takes). */
const mostMegabytes = 60;
const longest = 4096;

const newId = () => `picture-${crypto.randomUUID().slice(0, 8)}`;
const refuse = (store: Store, sentence: string) =>
  setPictures(store, { trouble: store.state.words.pictures.trouble(sentence), working: null });

/** Adds pictures of a server. Nothing is asked of it until `agree`. */
export function addAddress(store: Store, typed: string, credit: string): boolean {
  const { source, issue } = readPictureSource(typed, credit);
  if (!source) {
    refuse(store, `${issue?.sentence ?? ''} ${issue?.fix ?? ''}`);
    return false;
  }
  addPicture(store, {
    kind: 'served',
    id: newId(),
    name: source.host,
    credit: source.credit,
    opacity: 1,
    shown: true,
    source,
    agreed: false,
  });
  if (issue) say(store, 'tell', `${issue.sentence} ${issue.fix}`);
  return true;
}

/** From now on pictures are asked for. */
export function agree(store: Store, id: string): void {
  changePicture(store, id, { agreed: true });
}

/** PMTiles files chosen in this window, by the id of their picture: they are read piece by piece and not kept. */
const packs = new Map<string, File>();

/** The file of a tiled picture; null until it is chosen (again). */
export function packOf(id: string): File | null {
  return packs.get(id) ?? null;
}

/** What is to be laid down. `projection` stands in where a GeoTIFF does not name a known one; `spot` is where a plain picture goes. */
export interface PictureWish {
  readonly file: File;
  readonly projection: string | null;
  readonly spot: FreeSpot;
}

/** Adds whatever the file is. True when it would be readable with a projection that only the person knows. */
export async function addFile(store: Store, { file, projection, spot }: PictureWish): Promise<boolean> {
  await readPictures(store);
  const { words } = store.state;
  const megabytes = Math.ceil(file.size / 1e6);
  const tiles = /\.pmtiles$/i.test(file.name);
  if (!tiles && megabytes > mostMegabytes) {
    refuse(store, words.pictures.tooLarge(megabytes));
    return false;
  }
  setPictures(store, { working: words.pictures.working, trouble: null });
  try {
    if (tiles) await addTiles(store, file);
    else if (/\.tiff?$/i.test(file.name)) return await addTiff(store, file, projection);
    else await addPlain(store, file, spot);
  } catch (error) {
    refuse(store, error instanceof Error ? error.message : String(error));
  }
  return false;
}

async function addTiles(store: Store, file: File): Promise<void> {
  const { pack, issue } = await readTilePack(file);
  const { words, pictures } = store.state;
  if (!pack) return refuse(store, `${issue?.sentence ?? ''} ${issue?.fix ?? ''}`);
  if (pack.kind === 'lines') return refuse(store, words.pictures.tilesLines);
  const known = pictures.list.find((one) => one.kind === 'tiles' && one.name === file.name);
  const id = known?.id ?? newId();
  packs.set(id, file);
  const { leastZoom, mostZoom, bounds, credit } = pack;
  if (known) {
    setPictures(store, { working: null });
    changePicture(store, id, { leastZoom, mostZoom, bounds: [...bounds], shown: true });
  } else
    addPicture(store, {
      kind: 'tiles',
      id,
      name: file.name,
      credit,
      opacity: 1,
      shown: true,
      leastZoom,
      mostZoom,
      bounds,
    });
  const [west, south, east, north] = bounds;
  sayWhenFar(store, [
    [west, south],
    [east, north],
  ]);
}

/** A canvas with the picture, made smaller where it is too large for a graphics card. */
function fitted(picture: ImageBitmap): OffscreenCanvas {
  const share = Math.min(1, longest / Math.max(picture.width, picture.height));
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.round(picture.width * share)),
    Math.max(1, Math.round(picture.height * share)),
  );
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas;
}

async function addPlain(store: Store, file: File, spot: FreeSpot): Promise<void> {
  const { words } = store.state;
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture) return refuse(store, words.pictures.notPicture(file.name));
  const canvas = fitted(picture);
  const smaller = canvas.width < picture.width;
  const bytes = smaller ? await canvas.convertToBlob({ type: 'image/webp', quality: 0.9 }) : file;
  await place(store, file.name, bytes, canvas, cornersAt(spot, canvas.width / canvas.height));
  say(
    store,
    'tell',
    `${words.pictures.placed}${smaller ? ` ${words.pictures.smaller(canvas.width, canvas.height)}` : ''}`,
  );
}

async function addTiff(store: Store, file: File, projection: string | null): Promise<boolean> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const answer = await store.engine.call('geoPicture', { bytes, projection });
  const { picture } = answer;
  if (!picture) {
    refuse(store, answer.sentence);
    return answer.asks;
  }
  const pixels = new Uint8ClampedArray(picture.rgba);
  const canvas = fitted(await createImageBitmap(new ImageData(pixels, picture.width, picture.height)));
  await place(
    store,
    file.name,
    await canvas.convertToBlob({ type: 'image/webp', quality: 0.9 }),
    canvas,
    picture.corners,
  );
  sayWhenFar(store, picture.corners);
  return false;
}

async function place(
  store: Store,
  name: string,
  bytes: Blob,
  size: { readonly width: number; readonly height: number },
  corners: Corners,
): Promise<void> {
  const id = newId();
  drawn.set(id, bytes);
  const picture: PlacedPicture = {
    kind: 'placed',
    id,
    name,
    credit: '',
    opacity: 1,
    shown: true,
    width: size.width,
    height: size.height,
    corners,
    ties: [],
    fitting: 'similarity',
  };
  addPicture(store, picture);
  try {
    await picturesOf(store).setBytes(id, bytes);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    setPictures(store, { trouble: store.state.words.pictures.notKept(why) });
  }
}

/** Bytes of pictures of this window, so that one the device could not keep is still shown. */
const drawn = new Map<string, Blob>();

/** The bytes of a placed picture; null when they are on no shelf of this device. */
export async function bytesOf(store: Store, id: string): Promise<Blob | null> {
  return (
    drawn.get(id) ??
    picturesOf(store)
      .bytes(id)
      .catch(() => null)
  );
}

/** Over the free part of the map, upright, as large as fits. */
function cornersAt({ middle, width, height }: FreeSpot, aspect: number): Corners {
  const frame = makeFrame(middle);
  const wide = Math.min(width, height * aspect);
  const [x, y] = [wide / 2, wide / aspect / 2];
  const at = (px: number, py: number) => frame.toLonLat({ x: px, y: py });
  return [at(-x, y), at(x, y), at(x, -y), at(-x, -y)];
}

/** A picture that knows its own place may lie somewhere else: then it cannot be seen, and that is said. */
function sayWhenFar(store: Store, places: readonly LonLat[]): void {
  const { site, words } = store.state;
  const box = site && siteBounds(site);
  if (!box) return;
  const [lons, lats] = [places.map(([lon]) => lon), places.map(([, lat]) => lat)];
  const apart =
    Math.min(...lons) > box[2] ||
    Math.max(...lons) < box[0] ||
    Math.min(...lats) > box[3] ||
    Math.max(...lats) < box[1];
  if (apart) say(store, 'tell', words.pictures.outOfSite);
}
