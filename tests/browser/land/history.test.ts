/** Undo and redo of everything through the window's store: two hundred random edits back to the very bytes, and forth again. */
import { describe, expect, it } from 'vitest';
import { redo, stepsOf, undo } from '../../../src/app/actions/edit.ts';
import { change, choose } from '../../../src/app/actions/land-state.ts';
import { openText } from '../../../src/app/actions/open.ts';
import { EngineClient } from '../../../src/app/engine/client.ts';
import { memoryShelf } from '../../../src/app/storage/memory-shelf.ts';
import { Store } from '../../../src/app/store.ts';
import { addFeature } from '../../../src/edits/add-feature.ts';
import { addVertex } from '../../../src/edits/add-vertex.ts';
import { chainsOf } from '../../../src/edits/chains.ts';
import { deleteFeatures } from '../../../src/edits/delete-features.ts';
import { deleteVertex } from '../../../src/edits/delete-vertex.ts';
import type { Edit } from '../../../src/edits/edit.ts';
import { present } from '../../../src/edits/history.ts';
import { historyText, readHistory } from '../../../src/edits/history-text.ts';
import { moveFeatures } from '../../../src/edits/move-feature.ts';
import { moveVertex } from '../../../src/edits/move-vertex.ts';
import { setProperty } from '../../../src/edits/set-property.ts';
import { setSetting } from '../../../src/edits/set-setting.ts';
import { simplify } from '../../../src/edits/simplify.ts';
import { seededRandom } from '../../../src/geometry/random.ts';
import type { LonLat, Site } from '../../../src/site/types.ts';
import { writeSite } from '../../../src/site/write.ts';
import { smallSite } from '../sites.ts';

/** A worker that never answers: the history needs none. */
const silent = () =>
  new EngineClient(() => ({
    say: () => undefined,
    hear: () => undefined,
    lost: () => undefined,
    end: () => undefined,
  }));

function randomEdit(site: Site, random: () => number): Edit {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const near = (): LonLat => [(random() - 0.5) * 0.005, 40 + (random() - 0.5) * 0.003];
  const shaped = site.features.filter((f) => chainsOf(f.geometry).length > 0);
  const feature = pick(shaped);
  const [chain] = chainsOf(feature.geometry);
  const corner = { chain: 0, corner: Math.floor(random() * chain!.corners.length) };
  const [lon = 0, lat = 0] = chain!.corners[corner.corner]!;
  const [x, y] = near();
  const edits: (() => Edit)[] = [
    () =>
      addFeature(site, {
        kind: pick(['tree', 'post', 'feeder'] as const),
        geometry: { type: 'Point', coordinates: near() },
      }),
    () => addFeature(site, { kind: 'path', geometry: { type: 'LineString', coordinates: [near(), near(), near()] } }),
    () =>
      addFeature(site, {
        kind: 'brush',
        geometry: {
          type: 'Polygon',
          coordinates: [
            [
              [x, y],
              [x + 0.0002, y],
              [x, y + 0.0002],
              [x, y],
            ],
          ],
        },
      }),
    () => moveVertex(site, feature.id, corner, [lon + (random() - 0.5) * 1e-4, lat + (random() - 0.5) * 1e-4]),
    () => addVertex(site, feature.id, { chain: 0, corner: 0 }, [lon + 1e-5, lat + 2e-5]),
    () => deleteVertex(site, feature.id, corner),
    () => moveFeatures(site, [pick(site.features).id], [1e-5 * random(), 1e-5 * random()]),
    () => setProperty(site, [pick(site.features).id], 'name', `Name ${Math.floor(random() * 1000)}`),
    () => setSetting(site, 'minimumScore', Math.floor(random() * 100)),
    () =>
      site.features.length > 9
        ? deleteFeatures(site, [pick(site.features).id])
        : setSetting(site, 'walkers', 1 + Math.floor(random() * 9)),
    () => simplify(site, feature.id, 0.5),
  ];
  return pick(edits)();
}

describe('the one history of the window', () => {
  it('takes two hundred random edits back to the very bytes of the file, and makes them again', async () => {
    const store = new Store(silent(), memoryShelf());
    await openText(store, 'test', smallSite);
    const start = writeSite(store.state.site!);
    expect(start).toBe(smallSite);
    const random = seededRandom(20260601);
    const texts = [start];
    let refused = 0;
    while (texts.length <= 200) {
      const { site } = store.state;
      if (change(store, randomEdit(site!, random))) texts.push(writeSite(store.state.site!));
      else refused++;
      expect(refused).toBeLessThan(400);
    }
    expect(new Set(texts).size).toBeGreaterThan(190);
    expect(store.state.past.length).toBe(200);
    for (let i = 199; i >= 0; i--) {
      const sentence = store.state.past.at(-1)!.sentence;
      expect(sentence.length).toBeGreaterThan(3);
      undo(store);
      expect(writeSite(store.state.site!)).toBe(texts[i]);
    }
    expect(writeSite(store.state.site!)).toBe(smallSite);
    expect(store.state.past).toEqual([]);
    // As over a reload: what is kept of the steps is text, and another window reads it.
    const kept = readHistory(historyText(store.state.history!));
    const next = new Store(silent(), memoryShelf());
    await openText(next, 'test', smallSite);
    next.set({ history: kept, site: present(kept!), ...stepsOf(kept!) });
    expect(writeSite(next.state.site!)).toBe(smallSite);
    for (let i = 1; i <= 200; i++) {
      redo(next);
      expect(writeSite(next.state.site!)).toBe(texts[i]);
    }
    expect(next.state.future).toEqual([]);
    for (let i = 199; i >= 0; i--) undo(next);
    expect(writeSite(next.state.site!)).toBe(smallSite);
  });

  it('lets go of a chosen thing that an undo takes away', async () => {
    const store = new Store(silent(), memoryShelf());
    await openText(store, 'test', smallSite);
    change(
      store,
      addFeature(store.state.site!, { kind: 'tree', geometry: { type: 'Point', coordinates: [0.0001, 40] } }),
    );
    const id = store.state.site!.features.at(-1)!.id;
    choose(store, id);
    undo(store);
    expect(store.state.selection).toBe(null);
    redo(store);
    expect(store.state.site!.features.at(-1)!.id).toBe(id);
  });
});
