import { describe, expect, it } from 'vitest';
import { addFeature } from '../../../src/edits/add-feature.ts';
import { addPost } from '../../../src/edits/add-post.ts';
import { deleteFeatures } from '../../../src/edits/delete-features.ts';
import { importFeatures } from '../../../src/edits/import-features.ts';
import { deleteKept, giveKind } from '../../../src/edits/mend-kept.ts';
import { replaceSite } from '../../../src/edits/replace-site.ts';
import { setKind } from '../../../src/edits/set-kind.ts';
import { setPost } from '../../../src/edits/set-post.ts';
import { setProperty } from '../../../src/edits/set-property.ts';
import { setSetting } from '../../../src/edits/set-setting.ts';
import { readSite } from '../../../src/site/read.ts';
import { writeSite } from '../../../src/site/write.ts';
import { areaOf, box, done, find, land, thing, why } from './make.ts';

const site = land();

describe('adding and deleting', () => {
  it('adds with an id that is free, rounded, and refuses what the gate refuses', () => {
    const edit = addFeature(site, { kind: 'woods', geometry: areaOf(box(0, 10, 1, 1)), properties: { height: 12 } });
    expect(edit).toMatchObject({ sentence: 'Added Woods woods-1' });
    const again = done(addFeature(done(edit), { kind: 'woods', geometry: areaOf(box(2, 10, 1, 1)) }));
    expect(again.features.slice(-2).map(({ id }) => id)).toEqual(['woods-1', 'woods-2']);
    const crossed = areaOf([
      [-81, 41.01],
      [-80.99, 41.02],
      [-80.99, 41.01],
      [-81, 41.02],
      [-81, 41.01],
    ]);
    expect(why(addFeature(site, { kind: 'crop', geometry: crossed }))).toMatch(
      /crosses itself near 41\.0150, -80\.9950 \(a bow-tie/,
    );
    expect(why(addFeature(site, { kind: 'path', geometry: areaOf(box(0, 0, 1, 1)) }))).toMatch(/path needs a line/);
    const post = done(addPost(site, [-80.99123456789, 41.001])).features.at(-1)!;
    expect(post).toMatchObject({
      id: 'post-1',
      properties: { kind: 'post', state: 'candidate' },
      geometry: { coordinates: [-80.9912346, 41.001] },
    });
  });

  it('does not give the id of something kept', () => {
    const kept = [{ before: 0, feature: { type: 'Feature', id: 'woods-1' }, issue: 'kind-missing' }];
    const next = done(addFeature({ ...site, kept }, { kind: 'woods', geometry: areaOf(box(0, 10, 1, 1)) }));
    expect(next.features.at(-1)?.id).toBe('woods-2');
  });

  it('deletes with what pointed there', () => {
    const paired = done(setPost(site, 'p1', { pair: 'p2' }));
    const edit = deleteFeatures(paired, ['p2', 'gate', 'p2']);
    expect(edit).toMatchObject({ sentence: 'Deleted 2 features' });
    expect(find(done(edit), 'p1').properties).toEqual({ kind: 'post' });
    expect(done(edit).settings.start).toBeNull();
    expect(why(deleteFeatures(site, []))).toMatch(/Nothing is selected/);
    expect(deleteFeatures(site, ['woods'])).toMatchObject({ sentence: 'Deleted Woods “Long Spinney”' });
  });
});

describe('kinds, properties and settings', () => {
  it('sets a kind of the same shape', () => {
    const next = done(setKind(site, ['woods', 'meadow'], 'brush'));
    expect([find(next, 'woods').kind, find(next, 'meadow').properties.kind]).toEqual(['brush', 'brush']);
    expect(why(setKind(site, ['woods', 'path'], 'brush'))).toMatch(/Path path is a line; brush needs an area/);
  });

  it('sets and takes a property, refusing bad values of known ones', () => {
    const next = done(setProperty(site, ['woods'], 'height', 12));
    expect(find(next, 'woods').properties).toEqual({ kind: 'woods', name: 'Long Spinney', height: 12 });
    expect(find(done(setProperty(next, ['woods'], 'height', undefined)), 'woods').properties).toEqual(
      find(site, 'woods').properties,
    );
    expect(why(setProperty(site, ['woods'], 'height', 'tall'))).toMatch(
      /height of Woods “Long Spinney” cannot be "tall"\. Give 0 to 120 m/,
    );
    expect(why(setProperty(site, ['path'], 'height', 2))).toMatch(/Path path has no height/);
    expect(find(done(setProperty(site, ['path'], 'x-mine', { a: 1 })), 'path').properties['x-mine']).toEqual({ a: 1 });
    expect(() => setProperty(site, ['path'], 'kind', 'road')).toThrow(/not a property/);
  });

  it('sets a setting through the gate of the file', () => {
    const edit = setSetting(site, 'minutesPerBox', 5);
    expect(edit).toMatchObject({ sentence: 'Set minutes per box', site: { settings: { minutesPerBox: 5 } } });
    expect(done(edit).readFrom).toBeUndefined();
    expect(why(setSetting(site, 'date', '2026-02-30'))).toMatch(/date is "2026-02-30".*YYYY-MM-DD/);
    expect(why(setSetting(site, 'walkers', 0))).toMatch(/walkers/);
    expect(why(setSetting(site, 'wanted', [{ bird: 'a', sites: -1 }]))).toMatch(/less than none/);
    expect(done(setSetting(site, 'stormFrom', null)).settings.stormFrom).toBeNull();
  });
});

describe('posts', () => {
  it('sets several things at once, and null takes away', () => {
    const next = done(
      setPost(site, 'p1', { state: 'fixed', bird: 'tree-swallow', facing: 90, holeHeight: 1.5, number: 7 }),
    );
    expect(find(next, 'p1').properties).toEqual({
      kind: 'post',
      state: 'fixed',
      bird: 'tree-swallow',
      facing: 90,
      holeHeight: 1.5,
      number: 7,
    });
    const less = setPost(next, 'p1', { facing: null });
    expect(less).toMatchObject({ sentence: 'Changed Post p1 (facing)' });
    expect(find(done(less), 'p1').properties).not.toHaveProperty('facing');
    expect(why(setPost(site, 'p1', { facing: 400 }))).toMatch(/facing of Post p1 cannot be 400\. Give 0 to 360/);
    expect(() => setPost(site, 'woods', {})).toThrow(/not a post/);
  });

  it('keeps pairs mutual', () => {
    const three = done(addPost(site, [-80.9935, 41.002]));
    const one = done(setPost(three, 'p1', { pair: 'p2' }));
    expect([find(one, 'p1').properties.pair, find(one, 'p2').properties.pair]).toEqual(['p2', 'p1']);
    const other = done(setPost(one, 'post-1', { pair: 'p2' }));
    expect(['p1', 'p2', 'post-1'].map((id) => find(other, id).properties.pair)).toEqual([undefined, 'post-1', 'p2']);
    const alone = done(setPost(other, 'p2', { pair: null }));
    expect(['p2', 'post-1'].map((id) => find(alone, id).properties.pair)).toEqual([undefined, undefined]);
    expect(why(setPost(site, 'p1', { pair: 'p1' }))).toMatch(/with itself/);
    expect(why(setPost(site, 'p1', { pair: 'woods' }))).toMatch(/no post “woods”/);
  });
});

describe('bringing in', () => {
  it('lands as one edit, with free ids and pairs that follow', () => {
    const incoming = [
      thing('p1', 'post', { type: 'Point', coordinates: [-80.99, 41.001] }, { pair: 'new' }),
      thing('new', 'post', { type: 'Point', coordinates: [-80.9901, 41.00100000001] }, { pair: 'p1' }),
    ];
    const edit = importFeatures(site, incoming, 'walk.gpx');
    expect(edit).toMatchObject({ sentence: 'Brought in 2 features from walk.gpx' });
    const [first, second] = done(edit).features.slice(-2);
    expect([first!.id, first!.properties.pair, second!.id, second!.properties.pair]).toEqual([
      'post-1',
      'new',
      'new',
      'post-1',
    ]);
    expect(second!.geometry?.coordinates).toEqual([-80.9901, 41.001]);
    expect(find(done(edit), 'p1')).toBe(find(site, 'p1'));
    expect(why(importFeatures(site, [], 'walk.gpx'))).toMatch(/walk\.gpx holds nothing/);
  });

  it('puts another site in place with its own bytes', () => {
    const other = land([thing('t', 'tree', { type: 'Point', coordinates: [-81, 41.01] })]);
    expect(writeSite(done(replaceSite(site, other, 'Opened a copy')))).toBe(other.readFrom?.text);
  });
});

describe('what was kept', () => {
  const raw = { type: 'Feature', id: 'woods', properties: { kind: 'wods' }, geometry: areaOf(box(0, 10, 1, 1)) };
  const text = writeSite({
    ...site,
    readFrom: undefined,
    kept: [
      { before: 1, feature: raw, issue: 'kind-unknown' },
      { before: 9, feature: null, issue: 'not-a-feature' },
    ],
  });
  const start = readSite(text, 'x').site!;

  it('can be thrown away or given a kind', () => {
    expect(start.kept).toHaveLength(2);
    expect(done(deleteKept(start, 1)).kept).toHaveLength(1);
    expect(done(deleteKept(done(deleteKept(start, 1)), 0)).kept).toBeUndefined();
    const next = done(giveKind(start, 0, 'woods'));
    expect(next.features.at(-1)).toMatchObject({ kind: 'woods', properties: { kind: 'woods' } });
    expect(new Set(next.features.map(({ id }) => id)).size).toBe(next.features.length);
    expect(next.kept).toHaveLength(1);
    expect(why(giveKind(start, 0, 'post'))).toMatch(/post needs one point/);
    expect(why(giveKind(start, 1, 'post'))).toMatch(/not a feature/);
  });
});
