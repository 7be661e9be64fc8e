/**
 * The gate of the site file against verdicts that are not ours:
 * - RFC 7946, "The GeoJSON Format" (Butler et al., IETF, 2016), section by section;
 * - turf.kinks 7.4.0 (brute force over all pairs of edges) for outlines that cross themselves;
 * - geometry/ring.ts (exact predicates), the twin of our contact finder.
 */
import { booleanValid, kinks, polygon as turfPolygon } from '@turf/turf';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/geometry/random.ts';
import { selfCrossing } from '../../src/geometry/ring.ts';
import { readSite } from '../../src/site/read.ts';
import { ringContacts } from '../../src/site/ring-contacts.ts';
import { writeSite } from '../../src/site/write.ts';
import { cleanFeatures, feature, file, point, polygon, square } from '../unit/site/make.ts';

const ids = (text: string) => readSite(text, 'x').issues.map(({ id }) => id);
const one = (geometry: unknown, kind = 'meadow', more = {}) =>
  file([...cleanFeatures(), feature(geometry, { kind }, 'a', more)]);

describe('RFC 7946', () => {
  it('§3.1.6: a linear ring is closed with four or more positions, its first and last identical', () => {
    expect(ids(one(polygon(square(-80.98))))).toEqual([]);
    expect(ids(one(polygon(square(-80.98).slice(0, 4))))).toEqual(['ring-not-closed']);
    expect(
      ids(
        one(
          polygon([
            [-81, 41],
            [-80.99, 41],
            [-81, 41],
          ]),
        ),
      ),
    ).toEqual(['ring-too-short']);
  });

  it('§3.1.6: parsers should not reject polygons that do not follow the right-hand rule', () => {
    const { site, issues } = readSite(one(polygon(square(-80.98).toReversed())), 'x');
    expect(issues.map(({ severity }) => severity)).toEqual(['repaired']);
    expect(site?.features).toHaveLength(4);
  });

  it('§3.1.1: a position has two or more numbers; more than three should not be', () => {
    expect(ids(one({ type: 'Point', coordinates: [-81, 41, 320] }, 'tree'))).toEqual([]);
    expect(ids(one({ type: 'Point', coordinates: [-81] }, 'tree'))).toEqual(['position-not-a-number']);
    expect(ids(one({ type: 'Point', coordinates: [-81, 41, 320, 5] }, 'tree'))).toEqual(['extra-numbers']);
  });

  it('§3.2: a feature may be unlocated (null), and its id is text or a number', () => {
    expect(ids(one(null, 'tree'))).toEqual(['not-placed']);
    expect(ids(file([...cleanFeatures(), feature(point(), { kind: 'tree' }, 12)]))).toEqual([]);
    expect(ids(file([...cleanFeatures(), feature(point(), { kind: 'tree' }, true)]))).toEqual(['id-not-usable']);
  });

  it('§3.3 and §7.1: a collection has a list of features; a collection is no feature', () => {
    expect(ids('{"type":"FeatureCollection"}')).toEqual(['not-a-site']);
    expect(ids(file([JSON.parse(file([]))]))).toEqual(['two-sites']);
  });

  it('§4: the datum is WGS84; §6: foreign members are allowed and ours survive', () => {
    const text = file(cleanFeatures(), { region: 'europe' }, { title: 'A', 'x-y': { z: [1] } });
    expect(ids(text)).toEqual([]);
    expect(writeSite(readSite(text, 'x').site!)).toBe(text);
  });

  it('§3.1.9: a shape over the antimeridian has to be cut; uncut it is not opened', () => {
    const uncut = polygon([
      [179.95, 41],
      [-179.95, 41],
      [-179.95, 41.01],
      [179.95, 41.01],
      [179.95, 41],
    ]);
    const { site, issues } = readSite(file([feature(uncut, { kind: 'meadow' })]), 'x');
    expect(site).toBeNull();
    expect(issues.map(({ id }) => id)).toContain('site-too-wide');
  });
});

/** A ring of up to 12 corners on a coarse grid (many touches and shared lines) or a fine one. */
function randomRing(random: () => number): number[][] {
  const steps = random() < 0.5 ? 4 : 1000;
  const corners = 3 + Math.floor(random() * 10);
  const ring: number[][] = [];
  while (ring.length < corners) {
    const next = [Math.floor(random() * steps) / steps, Math.floor(random() * steps) / steps];
    const last = ring.at(-1);
    if (!last || last[0] !== next[0] || last[1] !== next[1]) ring.push(next);
  }
  const [first] = ring;
  if (ring.at(-1)![0] === first![0] && ring.at(-1)![1] === first![1]) ring.pop();
  return ring.length < 3 ? randomRing(random) : [...ring, first!];
}

describe('outlines that cross themselves', () => {
  it('agrees with the exact twin on 5,000 random rings, and with turf.kinks wherever no corners coincide', () => {
    const random = seededRandom(20_260_615);
    const counts = { crossing: 0, simple: 0, touching: 0 };
    for (let i = 0; i < 5000; i++) {
      const ring = randomRing(random);
      const contacts = ringContacts([ring]);
      const twin = selfCrossing(ring.map(([x, y]) => ({ x: x!, y: y! })));
      expect(contacts.length > 0, JSON.stringify(ring)).toBe(twin !== null);
      const bad = contacts.some(({ how }) => how !== 'touches');
      counts[bad ? 'crossing' : contacts.length > 0 ? 'touching' : 'simple']++;
      const different = new Set(ring.map(String)).size === ring.length - 1;
      if (different && contacts.every(({ how }) => how === 'crosses')) {
        expect(kinks(turfPolygon([ring])).features.length > 0, JSON.stringify(ring)).toBe(bad);
      }
    }
    expect(Math.min(counts.crossing, counts.simple)).toBeGreaterThan(500);
    expect(counts.touching).toBeGreaterThan(15);
  });

  it('refuses the bow-tie that turf.booleanValid lets through', () => {
    const bow = [
      [-81, 41],
      [-80.99, 41.01],
      [-80.99, 41],
      [-81, 41.01],
      [-81, 41],
    ];
    expect(booleanValid(turfPolygon([bow]))).toBe(true);
    expect(kinks(turfPolygon([bow])).features).toHaveLength(1);
    expect(ids(one(polygon(bow)))).toEqual(['ring-crosses-itself']);
    const place = readSite(one(polygon(bow)), 'x').issues[0]!.place!;
    const [x, y] = kinks(turfPolygon([bow])).features[0]!.geometry.coordinates as [number, number];
    expect(Math.hypot(place[0] - x, place[1] - y)).toBeLessThan(1e-9);
  });
});

describe('damaged files', () => {
  const good = writeSite(
    readSite(
      file([
        ...cleanFeatures(),
        feature(
          {
            type: 'LineString',
            coordinates: [
              [-81, 41],
              [-80.99, 41.004],
            ],
          },
          { kind: 'path', name: 'Lane' },
          'l',
        ),
      ]),
      'x',
    ).site!,
  );

  it('2,000 one-character changes, deletions and cuts: never a throw, always issues or a site that saves and opens alike', () => {
    const random = seededRandom(7);
    const seen = { refused: 0, opened: 0 };
    for (let i = 0; i < 2000; i++) {
      const at = Math.floor(random() * good.length);
      const letter = String.fromCharCode(Math.floor(random() * 256));
      const damages = [
        good.slice(0, at) + letter + good.slice(at + 1),
        good.slice(0, at) + good.slice(at + 1),
        good.slice(0, at),
      ];
      const damaged = damages[i % 3]!;
      const { site, issues } = readSite(damaged, 'damaged');
      if (!site) {
        expect(
          issues.some(({ severity }) => severity === 'error'),
          damaged,
        ).toBe(true);
        seen.refused++;
        continue;
      }
      seen.opened++;
      const saved = writeSite(site);
      expect(writeSite(readSite(saved, 'damaged').site!), damaged).toBe(saved);
    }
    expect(seen.refused).toBeGreaterThan(700);
    expect(seen.opened).toBeGreaterThan(200);
  });

  it('every cut but the one that only takes the last newline is refused as cut short or empty', () => {
    for (let length = 0; length < good.trimEnd().length; length++) {
      const { site, issues } = readSite(good.slice(0, length), 'cut');
      expect(site, `cut at ${length}`).toBeNull();
      expect(issues[0]?.sentence).toMatch(/cut short|is empty/);
    }
  });
});
