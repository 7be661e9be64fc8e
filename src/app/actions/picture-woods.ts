/** Woods from a local height raster: found by the engine, dashed on the map, kept as one step of the history. */
import { importFeatures } from '../../edits/import-features.ts';
import { type Canopy, type CanopySettings, canopySettings } from '../../exchange/canopy.ts';
import { draftFeatures } from '../../exchange/draft-features.ts';
import { eachPosition } from '../../ground/frame.ts';
import type { Store } from '../store.ts';
import { change, lookAt, setLand } from './land-state.ts';
import { setPictures } from './picture-state.ts';
import { say } from './say.ts';
import { goTo } from './select.ts';

/** Names a pair of files, so that the engine need not read them twice. */
const keyOf = (files: readonly (File | null)[], projection: string | null) =>
  JSON.stringify([projection, ...files.map((one) => one && [one.name, one.size, one.lastModified])]);

const bytesIn = async (file: File | null) => (file ? new Uint8Array(await file.arrayBuffer()) : null);

/** Looks for woods and shows them; nothing is changed. */
export async function findWoods(
  store: Store,
  surface: File,
  ground: File | null,
  projection: string | null,
  changed: Partial<CanopySettings> = {},
): Promise<void> {
  const { words } = store.state;
  const settings = { ...canopySettings, ...changed };
  setPictures(store, { working: words.pictures.woods.working, trouble: null });
  try {
    const answer = await store.engine.call('canopy', {
      key: keyOf([surface, ground], projection),
      surface: await bytesIn(surface),
      ground: await bytesIn(ground),
      projection,
      settings,
    });
    if (!answer.canopy) {
      setPictures(store, { working: null, trouble: words.pictures.trouble(answer.sentence) });
      return;
    }
    setPictures(store, { working: null, woods: { name: surface.name, settings, canopy: answer.canopy } });
    show(store, answer.canopy);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    setPictures(store, { working: null, trouble: words.pictures.trouble(why) });
  }
}

/** Dashed on the map, which belongs to the Land place and moves to where they are. */
function show(store: Store, { features }: Canopy): void {
  goTo(store, 'land');
  const preview = features.map((one) => one.geometry);
  setLand(store, { preview });
  const positions: [number, number][] = [];
  for (const shape of preview) eachPosition(shape, (lon, lat) => positions.push([lon, lat]));
  if (positions.length > 0) lookAt(store, { type: 'LineString', coordinates: positions });
}

/** Puts the preview away. */
export function dropWoods(store: Store): void {
  setPictures(store, { woods: null });
  setLand(store, { preview: [] });
}

/** Keeps what is shown, as one step. */
export function keepWoods(store: Store): void {
  const { site, pictures } = store.state;
  if (!site || !pictures.woods) return;
  const { canopy, name } = pictures.woods;
  const answer = importFeatures(site, draftFeatures(canopy.features), name);
  if ('refused' in answer) {
    say(store, 'trouble', answer.refused);
    return;
  }
  if (change(store, answer)) dropWoods(store);
}
