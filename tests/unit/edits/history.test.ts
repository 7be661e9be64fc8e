import { describe, expect, it } from 'vitest';
import { addFeature } from '../../../src/edits/add-feature.ts';
import { addPost } from '../../../src/edits/add-post.ts';
import { addVertex } from '../../../src/edits/add-vertex.ts';
import { chainsOf } from '../../../src/edits/chains.ts';
import { deleteFeatures } from '../../../src/edits/delete-features.ts';
import { deleteVertex } from '../../../src/edits/delete-vertex.ts';
import type { Edit } from '../../../src/edits/edit.ts';
import {
  canRedo,
  canUndo,
  type History,
  present,
  push,
  redo,
  replaceTop,
  startHistory,
  undo,
} from '../../../src/edits/history.ts';
import { historyText, readHistory } from '../../../src/edits/history-text.ts';
import { mergeAreas } from '../../../src/edits/merge-areas.ts';
import { moveFeatures } from '../../../src/edits/move-feature.ts';
import { moveVertex } from '../../../src/edits/move-vertex.ts';
import { setKind } from '../../../src/edits/set-kind.ts';
import { setPost } from '../../../src/edits/set-post.ts';
import { setProperty } from '../../../src/edits/set-property.ts';
import { setSetting } from '../../../src/edits/set-setting.ts';
import { splitArea } from '../../../src/edits/split-area.ts';
import { seededRandom } from '../../../src/geometry/random.ts';
import { readSite } from '../../../src/site/read.ts';
import type { LonLat, Site, SiteFeature } from '../../../src/site/types.ts';
import { writeSite } from '../../../src/site/write.ts';
import { areaOf, box, done, land } from './make.ts';

/** One random edit of a site: any of a dozen, anywhere; it may be refused. */
function randomEdit(site: Site, random: () => number): Edit {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const place = (): LonLat => [-81 + random() * 0.01, 41 + random() * 0.01];
  const some = pick(site.features);
  const cornered = pick(site.features.filter(({ geometry }) => chainsOf(geometry).length > 0));
  const chain = Math.floor(random() * chainsOf(cornered.geometry).length);
  const corner = { chain, corner: Math.floor(random() * chainsOf(cornered.geometry)[chain]!.corners.length) };
  const areas = site.features.filter(({ geometry }) => geometry?.type === 'Polygon');
  const post = pick(site.features.filter(({ kind }) => kind === 'post'));
  const small = random() * 0.0004;
  const edits: (() => Edit)[] = [
    () => addPost(site, place()),
    () => addFeature(site, { kind: 'crop', geometry: areaOf(box(random() * 9, random() * 9, 1, 1)) }),
    () => moveVertex(site, cornered.id, corner, nudged(cornered, corner, small)),
    () => addVertex(site, cornered.id, corner, nudged(cornered, corner, small)),
    () => deleteVertex(site, cornered.id, corner),
    () => moveFeatures(site, [some.id], [small, -small]),
    () => splitArea(site, pick(areas).id, [place(), place()]),
    () => mergeAreas(site, [pick(areas).id, pick(areas).id]),
    () => setKind(site, [pick(areas).id], pick(['woods', 'meadow', 'crop'])),
    () => setProperty(site, [some.id], 'note', `n${Math.floor(random() * 100)}`),
    () => setSetting(site, 'minutesPerBox', Math.floor(random() * 9)),
    () => setPost(site, post.id, { facing: Math.floor(random() * 360) }),
    () => (site.features.length > 8 && some.kind === 'crop' ? deleteFeatures(site, [some.id]) : addPost(site, place())),
  ];
  return pick(edits)();
}

function nudged(feature: SiteFeature, { chain, corner }: { chain: number; corner: number }, by: number): LonLat {
  const [lon, lat] = chainsOf(feature.geometry)[chain]!.corners[corner]!;
  return [lon! + by, lat! + by / 2];
}

/** A history of `count` edits that were not refused, with the text after each. */
function manyEdits(seed: number, count: number): { history: History; texts: string[] } {
  const random = seededRandom(seed);
  let history = startHistory(land());
  const texts = [writeSite(present(history))];
  while (texts.length <= count) {
    const edit = randomEdit(present(history), random);
    if ('refused' in edit || edit.site === present(history)) continue;
    history = push(history, edit.site, edit.sentence);
    texts.push(writeSite(edit.site));
  }
  return { history, texts };
}

describe('history', () => {
  it.each([1, 2, 3])(
    'seed %i: 200 random edits, each readable without repair; 200 undos give the byte-equal start, redo the byte-equal end',
    (seed) => {
      let { history, texts } = manyEdits(seed, 200);
      for (const text of texts.filter((_, i) => i % 20 === 0)) {
        const bad = readSite(text, 'x').issues.filter(
          ({ severity }) => severity === 'error' || severity === 'repaired',
        );
        expect(bad).toEqual([]);
      }
      for (let i = 200; i > 0; i--) {
        expect(writeSite(present(history))).toBe(texts[i]);
        expect(canUndo(history)).not.toBe('');
        history = undo(history);
      }
      expect(writeSite(present(history))).toBe(land().readFrom?.text);
      expect(canUndo(history)).toBeNull();
      expect(undo(history)).toBe(history);
      for (let i = 0; i < 200; i++) history = redo(history);
      expect(writeSite(present(history))).toBe(texts.at(-1));
      expect(canRedo(history)).toBeNull();
      expect(redo(history)).toBe(history);
    },
  );

  it('survives a reload: text and back, byte-equal at every step, still sharing what did not change', () => {
    const { history, texts } = manyEdits(4, 200);
    const back = undo(undo(history));
    const text = historyText(back);
    const read = readHistory(text)!;
    expect(read.at).toBe(198);
    expect(read.steps.map(({ site }) => writeSite(site))).toEqual(texts);
    expect(read.steps.map(({ sentence }) => sentence)).toEqual(history.steps.map(({ sentence }) => sentence));
    expect(historyText(read)).toBe(text);
    const all = texts.reduce((sum, one) => sum + one.length, 0);
    expect(text.length).toBeLessThan(all / 3);
    const gate = (i: number) => read.steps[i]!.site.features.find(({ id }) => id === 'gate');
    expect(gate(0)).toBe(gate(1));
  });

  it('is null for a damaged text, never a throw', () => {
    const text = historyText(manyEdits(5, 5).history);
    const random = seededRandom(9);
    for (let i = 0; i < 500; i++) {
      const at = Math.floor(random() * text.length);
      const read = readHistory(
        i % 2 === 0 ? text.slice(0, at) : `${text.slice(0, at)}${Math.floor(random() * 10)}${text.slice(at + 1)}`,
      );
      if (read) expect(read.steps[read.at]).toBeDefined();
      if (i % 2 === 0) expect(read).toBeNull();
    }
    for (const bad of ['', 'null', '{}', '{"version":1}', '{"version":2}', '[]']) expect(readHistory(bad)).toBeNull();
  });

  it('takes a whole drag back at once, and forgets what could be redone', () => {
    const start = land();
    const drag = [1, 2, 3].map((i) => done(moveFeatures(start, ['p1'], [i / 10_000, 0])));
    let history = push(startHistory(start), drag[0]!, 'Moved Post p1');
    history = replaceTop(replaceTop(history, drag[1]!, 'Moved Post p1'), drag[2]!, 'Moved Post p1');
    expect(present(history)).toBe(drag[2]);
    expect(canUndo(history)).toBe('Moved Post p1');
    history = undo(history);
    expect(present(history)).toBe(start);
    expect(canRedo(history)).toBe('Moved Post p1');
    history = push(history, drag[0]!, 'Moved again');
    expect(canRedo(history)).toBeNull();
    expect(present(replaceTop(startHistory(start), drag[0]!, 'x'))).toBe(drag[0]);
    expect(present(undo(replaceTop(startHistory(start), drag[0]!, 'x')))).toBe(start);
    expect(push(history, drag[0]!, 'same')).toBe(history);
  });

  it('holds no more than it may, and does not change what it was given', () => {
    const sites = Array.from({ length: 30 }, (_, i) => done(setSetting(land(), 'seed', i + 2)));
    const short = sites.reduce((history, site, i) => push(history, site, `step ${i}`), startHistory(land(), 10));
    expect(short.steps).toHaveLength(10);
    expect(present(short)).toBe(sites[29]);
    let back = short;
    while (canUndo(back) !== null) back = undo(back);
    expect(present(back)).toBe(sites[20]);
    expect(() => startHistory(land(), 0)).toThrow(/at least one step/);
  });
});
