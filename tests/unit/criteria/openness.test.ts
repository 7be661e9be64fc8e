import { describe, expect, it } from 'vitest';
import { openness } from '../../../src/criteria/openness.ts';
import { rectangle } from '../ground/plane-site.ts';
import { contextOf, judged, make, post } from './fixture.ts';

const half = (kind: 'short-grass' | 'meadow' | 'woods', side: -1 | 1) => ({
  kind,
  rings: [side < 0 ? rectangle(-300, -300, 0, 300) : rectangle(0, -300, 300, 300)],
});
const all = (kind: 'short-grass' | 'meadow' | 'crop' | 'woods') => ({ kind, rings: [rectangle(-300, -300, 300, 300)] });

describe('openness', () => {
  it('is full on a wide lawn and nothing inside woods', () => {
    expect(judged(openness, make([all('short-grass')]), 'eastern-bluebird').score).toBe(1);
    expect(judged(openness, make([all('woods')]), 'eastern-bluebird').score).toBe(0);
  });

  it('weighs each kind of land', () => {
    const both = judged(openness, make([half('short-grass', -1), half('meadow', 1)]), 'eastern-bluebird');
    expect(both.raw).toBeCloseTo(0.5 * 1 + 0.5 * 0.45, 6);
    expect(judged(openness, make([all('crop')]), 'eastern-bluebird').raw).toBeCloseTo(0.3, 9);
  });

  it('takes a bird’s own weights before the site’s', () => {
    expect(judged(openness, make([all('meadow')]), 'tree-swallow').raw).toBeCloseTo(0.9, 9);
  });

  it('never counts undrawn ground as open, and is not judged where nine tenths are not drawn', () => {
    const part = judged(
      openness,
      make([{ kind: 'short-grass', rings: [rectangle(-300, -300, 0, 300)] }]),
      'eastern-bluebird',
    );
    expect(part.raw).toBeCloseTo(0.5, 9);
    // Half drawn short, half anything: the mean of the curve (0 to .2, 1 from .85) over .5 to 1 is (.35 * (6/13 + 1) / 2 + .15) / .5.
    const sight = 1;
    expect(part.score).toBeCloseTo(0.7 * (0.35 * (6 / 13 + 1) + 0.3) + 0.3 * sight, 9);
    expect(part.sentence).toContain('Low cover on at least 50 % of 40 m around (50 % of it is not drawn), wants 85 %');
    const drawn = (kind: 'short-grass' | 'meadow' | 'woods') =>
      judged(
        openness,
        make([
          { kind: 'short-grass', rings: [rectangle(-300, -300, 0, 300)] },
          { kind, rings: [rectangle(0, -300, 300, 300)] },
        ]),
        'eastern-bluebird',
      ).score!;
    expect(drawn('short-grass')).toBeGreaterThan(part.score!);
    expect(drawn('woods')).toBeLessThan(part.score!);
    const little = judged(
      openness,
      make([{ kind: 'short-grass', rings: [rectangle(0, 0, 10, 10)] }]),
      'eastern-bluebird',
    );
    expect(little.score).toBeNull();
    expect(little.sentence).toBe('Openness not judged: 98 % of the surroundings is not drawn');
  });

  it('says share, reach and what is wanted in the site’s units', () => {
    const made = make([half('short-grass', -1), half('woods', 1)]);
    expect(judged(openness, made, 'eastern-bluebird', post(-20, 0)).sentence).toMatch(
      /^Low cover on 80 % of 40 m around, wants 85 %; free sight \d+ m, wants 120 m$/,
    );
    const feet = make([all('short-grass')], { units: 'us' });
    expect(judged(openness, feet, 'eastern-bluebird').sentence).toContain('of 131 ft around');
  });

  it('leaves sight out for a bird that does not mind it', () => {
    const lot = judged(openness, make([half('short-grass', -1), half('woods', 1)]), 'house-wren');
    expect(lot.sentence).not.toContain('sight');
    expect(lot.score).toBe(1);
  });

  it('moves with the figures a person sets', () => {
    const made = make([half('short-grass', -1), half('woods', 1)], {
      figures: { 'openness.full': 0.5, 'openness.zero': 0.1, 'openness.coverPart': 1 },
    });
    expect(judged(openness, made, 'eastern-bluebird').score).toBeCloseTo(1, 6);
    const weighed = make([all('meadow')], { figures: { 'openness.meadow': 0.6 } });
    expect(judged(openness, weighed, 'eastern-bluebird').raw).toBeCloseTo(0.6, 9);
  });

  it('draws a curve that passes through the score', () => {
    const context = contextOf(make([half('short-grass', -1), half('meadow', 1)]), 'eastern-bluebird');
    const measured = openness.measure(context);
    if (measured.raw === null) throw new Error(measured.reason);
    const curve = openness.curve!(context);
    const [[x0, y0], [x1, y1]] = curve as [[number, number], [number, number]];
    expect(openness.score(measured, context)).toBeCloseTo(y0 + ((measured.raw - x0) / (x1 - x0)) * (y1 - y0), 9);
  });

  it('refuses a martin pole within 40 ft of something taller than the hole, also deep inside it', () => {
    const tree = (x: number) =>
      make([all('short-grass'), { kind: 'tree', at: [x, 0], properties: { height: 12, crownRadius: 3 } }]);
    expect(judged(openness, tree(10), 'purple-martin').hard).toContain('needs 12 m clear');
    expect(judged(openness, tree(16), 'purple-martin').hard).toBeNull();
    expect(judged(openness, make([all('woods')]), 'purple-martin').hard).toContain('inside or under');
    const low = make([
      all('short-grass'),
      {
        kind: 'hedge',
        line: [
          [5, -50],
          [5, 50],
        ],
        properties: { height: 2 },
      },
    ]);
    expect(judged(openness, low, 'purple-martin').hard).toBeNull();
  });
});
