import { describe, expect, test } from 'vitest';
import type { BirdGuide, Figure } from '../../../src/birds/guide.ts';
import { birdById, birdGuides, birdsOf, isBird } from '../../../src/birds/index.ts';
import { isRegion, regions } from '../../../src/birds/regions.ts';
import { sourceByKey, sources } from '../../../src/birds/sources.ts';

const grades = ['A', 'A-', 'B', 'C', 'M', 'X', 'ours'];

/** Every figure of a guide with its path. */
function figures(value: unknown, path: string): [string, Figure<unknown>][] {
  if (value === null || typeof value !== 'object') return [];
  if ('source' in value && 'value' in value) return [[path, value as Figure<unknown>]];
  return Object.entries(value).flatMap(([key, inner]) => figures(inner, `${path}.${key}`));
}
const all = birdGuides.flatMap((bird) => figures(bird, bird.id));
const curves = birdGuides.flatMap((bird) =>
  figures(bird.habitat, bird.id).filter(([, figure]) => figure.unit.endsWith('→ score')),
);

describe('every figure', () => {
  test('there are many', () => expect(all.length).toBeGreaterThan(350));
  test.each(all)('%s has a unit, a grade and known sources', (_, figure) => {
    expect(figure.unit).not.toBe('');
    expect(grades).toContain(figure.grade);
    expect(figure.source.length).toBeGreaterThan(0);
    for (const key of figure.source) expect(sourceByKey(key).key).toBe(key);
    if (figure.grade === 'M') expect(figure.source).toContain('from memory');
    if (figure.grade === 'ours') expect(figure.source).toContain('ours');
    if (figure.range) expect(figure.range[0]).toBeLessThanOrEqual(figure.range[1]);
  });
  test.each(all.filter(([, figure]) => figure.grade === 'A' || figure.grade === 'B'))(
    '%s claims no more than one of its sources has',
    (_, figure) => {
      const best = figure.source.map((key) => sourceByKey(key).grade);
      expect(best).toContain(figure.grade);
    },
  );
});

describe('every pair of least and most', () => {
  const pairs = all.filter(
    ([path, figure]) =>
      figure.unit !== 'mm' &&
      Array.isArray(figure.value) &&
      !path.endsWith('Share') &&
      typeof figure.value[0] === 'number',
  );
  test.each(pairs)('%s rises and is above zero', (_, figure) => {
    const [least, most] = figure.value as [number, number];
    expect(least).toBeGreaterThan(0);
    expect(most).toBeGreaterThanOrEqual(least);
  });
});

describe('every curve', () => {
  test('there are many', () => expect(curves.length).toBeGreaterThan(60));
  test.each(curves)('%s rises in raw, scores 0–1', (_, figure) => {
    const knots = figure.value as readonly (readonly [number, number])[];
    expect(knots.length).toBeGreaterThanOrEqual(2);
    knots.forEach(([raw, score], i) => {
      expect(Number.isFinite(raw)).toBe(true);
      if (i > 0) expect(raw).toBeGreaterThan(knots[i - 1]![0]);
      expect(score).toBeGreaterThanOrEqual(0);
      expect(score).toBeLessThanOrEqual(1);
    });
  });
});

describe('every guide', () => {
  const template: BirdGuide = birdById('eastern-bluebird');
  const paths = (value: object, skip: readonly string[]): string[] =>
    Object.entries(value).flatMap(([key, inner]) =>
      inner && typeof inner === 'object' && !('source' in inner) && !Array.isArray(inner) && !skip.includes(key)
        ? [key, ...paths(inner, skip).map((path) => `${key}.${path}`)]
        : [key],
    );
  test.each(birdGuides.map((bird) => [bird.id, bird] as const))('%s lacks no field', (_, bird) => {
    const have = new Set(paths(bird, ['other']));
    expect(paths(template, ['other']).filter((path) => !have.has(path))).toEqual([]);
    expect(bird.regions.length).toBeGreaterThan(0);
    expect(bird.regions.every(isRegion)).toBe(true);
    expect(bird.season.from).toMatch(/^(0[1-9]|1[0-2])-([0-2]\d|3[01])$/);
    expect(bird.season.from < bird.season.to).toBe(true);
    for (const key of bird.season.source) sourceByKey(key);
    for (const other of Object.keys(bird.spacing.other)) expect(isBird(other)).toBe(true);
  });
  test('spacing between two kinds is the same seen from either', () => {
    for (const bird of birdGuides) {
      for (const [id, figure] of Object.entries(bird.spacing.other)) {
        expect(birdById(id).spacing.other[bird.id]?.value, `${bird.id}–${id}`).toBe(figure.value);
      }
    }
  });
  test('ids and source keys are used once', () => {
    expect(new Set(birdGuides.map((bird) => bird.id)).size).toBe(birdGuides.length);
    expect(new Set(sources.map((source) => source.key)).size).toBe(sources.length);
  });
});

describe('finding a bird', () => {
  test('an unknown id throws with the list', () => {
    expect(() => birdById('dodo')).toThrow(/unknown bird: dodo; known: eastern-bluebird, /);
    expect(isBird('dodo')).toBe(false);
    expect(isBird('toString')).toBe(false);
  });
  test('an unknown source throws', () => expect(() => sourceByKey('hearsay')).toThrow(/unknown source: hearsay/));
  test.each(regions.map((region) => region.id))('%s has birds, and pests only when asked', (region) => {
    const wanted = birdsOf(region, { pests: false });
    expect(wanted.length).toBeGreaterThan(4);
    expect(wanted.every((bird) => bird.regions.includes(region) && !bird.pest)).toBe(true);
    const pests = birdsOf(region, { pests: true }).filter((bird) => bird.pest);
    expect(pests.map((bird) => bird.id)).toEqual(region === 'europe' ? [] : ['house-sparrow', 'european-starling']);
  });
});
