/** Pictures under the land: those of this device as textures, tiles of a local file, and tiles of a server the person agreed to. */

import { addProtocol, type CanvasSource, type LayerSpecification, type SourceSpecification } from 'maplibre-gl';
import { FileSource, PMTiles, Protocol } from 'pmtiles';
import { bytesOf, packOf } from '../../actions/picture-add.ts';
import { carryPictures, readPictures } from '../../actions/picture-state.ts';
import { isRenamed } from '../../actions/season-follow.ts';
import type { Corners, GroundPicture, PlacedPicture } from '../../picture-state.ts';
import type { MapHost, Overlay } from '../host.ts';

const idOf = (id: string) => `under:${id}`;
const protocol = new Protocol();
addProtocol('pmtiles', protocol.tile);

export function pictures(host: MapHost): Overlay {
  const wanted = new Set<string>();
  let turn = 0;
  return {
    update(state, before) {
      if (before && state.siteId !== before.siteId && isRenamed(state, before))
        void carryPictures(host.store, before.siteId!, state.siteId!);
      if (state.siteId !== before?.siteId || (state.ground === 'photo' && before?.ground !== 'photo'))
        if (state.ground === 'photo') void readPictures(host.store);
      if (before && state.pictures.list === before.pictures.list && state.ground === before.ground) return;
      const shown = state.ground === 'photo' ? state.pictures.list.filter(isShown) : [];
      removeOthers(host, wanted, shown);
      for (const picture of shown) void show(host, picture, wanted, () => turn);
    },
    remove() {
      turn++;
    },
  };
}

const isShown = (one: GroundPicture) =>
  one.shown && (one.kind !== 'served' || one.agreed) && (one.kind !== 'tiles' || packOf(one.id) !== null);

function removeOthers({ map }: MapHost, wanted: Set<string>, shown: readonly GroundPicture[]): void {
  for (const id of [...wanted]) {
    if (shown.some((one) => one.id === id)) continue;
    wanted.delete(id);
    if (map.getLayer(idOf(id))) map.removeLayer(idOf(id));
    if (map.getSource(idOf(id))) map.removeSource(idOf(id));
  }
}

async function show(host: MapHost, picture: GroundPicture, wanted: Set<string>, turnNow: () => number): Promise<void> {
  const { map, store } = host;
  const id = idOf(picture.id);
  if (wanted.has(picture.id)) {
    if (map.getLayer(id)) change(host, picture);
    return;
  }
  wanted.add(picture.id);
  const turn = turnNow();
  const source = await sourceOf(host, picture);
  if (turn !== turnNow() || !wanted.has(picture.id) || map.getSource(id) || !source) return;
  const now = store.state.pictures.list.find((one) => one.id === picture.id) ?? picture;
  map.addSource(id, source);
  host.layer(layerOf(now), 'photo');
  change(host, now);
}

function layerOf({ id, opacity }: GroundPicture): LayerSpecification {
  return {
    id: idOf(id),
    type: 'raster',
    source: idOf(id),
    paint: { 'raster-opacity': opacity, 'raster-fade-duration': 0 },
  };
}

function change(host: MapHost, picture: GroundPicture): void {
  host.layer(layerOf(picture), 'photo');
  if (picture.kind !== 'placed') return;
  const source = host.map.getSource(idOf(picture.id)) as CanvasSource | undefined;
  source?.setCoordinates(positions(picture.corners));
}

const positions = (corners: Corners) => corners.map(([lon, lat]) => [lon, lat]) as CanvasSource['coordinates'];

async function sourceOf(host: MapHost, picture: GroundPicture): Promise<SourceSpecification | null> {
  if (picture.kind === 'placed') return canvasSource(host, picture);
  if (picture.kind === 'served') {
    const { template, tms } = picture.source;
    return {
      type: 'raster',
      tiles: [template],
      tileSize: 256,
      maxzoom: 22,
      ...(tms ? { scheme: 'tms' as const } : {}),
    };
  }
  const file = packOf(picture.id);
  if (!file) return null;
  // Two files of one name would be one archive: the picture's own id stands in for the name.
  const own = new FileSource(file);
  own.getKey = () => picture.id;
  protocol.add(new PMTiles(own));
  const { leastZoom: minzoom, mostZoom: maxzoom, bounds } = picture;
  return {
    type: 'raster',
    tiles: [`pmtiles://${picture.id}/{z}/{x}/{y}`],
    tileSize: 256,
    minzoom,
    maxzoom,
    bounds: [...bounds],
  };
}

/** The picture as a canvas: the map takes it as it is, and nothing is fetched. */
async function canvasSource({ store }: MapHost, picture: PlacedPicture): Promise<SourceSpecification | null> {
  const bytes = await bytesOf(store, picture.id);
  const bitmap = bytes && (await createImageBitmap(bytes).catch(() => null));
  if (!bitmap) return null;
  const canvas = document.createElement('canvas');
  canvas.width = picture.width;
  canvas.height = picture.height;
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  return {
    type: 'canvas',
    canvas,
    coordinates: positions(picture.corners),
    animate: false,
  } as unknown as SourceSpecification;
}
