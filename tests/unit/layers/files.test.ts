import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { order, subjects } from '../../../layers/all.ts';
import { landLayers } from '../../../src/app/map/style.ts';
import { themeNames } from '../../../src/app/theme.ts';
import { en } from '../../../src/app/words/en.ts';
import { allKinds } from '../../../src/site/kinds.ts';

const files = readdirSync('layers')
  .filter((name) => name.endsWith('.json') && !['order.json', 'walkers.json'].includes(name))
  .map((name) => name.replace('.json', ''));

describe('layers/', () => {
  it('has every file in order.json and in all.ts', () => {
    expect([...order.subjects].sort()).toEqual(files.sort());
    expect(subjects.map((s) => s.id)).toEqual(order.subjects);
  });

  it('draws every kind of the site', () => {
    const drawn = new Set(subjects.flatMap((s) => s.kinds));
    expect(allKinds.filter((kind) => !drawn.has(kind))).toEqual([]);
  });

  it.each(themeNames)('knows every name in the %s theme', (theme) => {
    for (const ground of ['drawing', 'photo', 'lie'] as const) {
      const layers = landLayers({ theme, ground });
      expect(new Set(layers.map((l) => l.id)).size).toBe(layers.length);
      expect(JSON.stringify(layers)).not.toMatch(/"\$/);
    }
  });

  it('has a word for every row of the key and layers for every swatch', () => {
    for (const subject of subjects)
      for (const row of subject.legend) {
        expect(en.kinds[row.word], row.word).toBeTypeOf('string');
        for (const id of row.layers) expect(subject.layers.map((l) => l.id)).toContain(id);
      }
  });

  it('puts every layer in a slot of order.json', () => {
    for (const subject of subjects) for (const layer of subject.layers) expect(order.slots).toContain(layer.slot);
  });

  it('draws paths with absolute M L Q C Z only, so that canvas, SVG and PDF read them', () => {
    for (const file of files) {
      const text = readFileSync(`layers/${file}.json`, 'utf8');
      for (const [, path] of text.matchAll(/"path": "([^"]*)"/g)) expect(path, file).toMatch(/^[MLQCZ0-9 .-]+$/);
    }
  });
});
