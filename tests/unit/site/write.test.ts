import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newSite } from '../../../src/site/new-site.ts';
import { readSite } from '../../../src/site/read.ts';
import { lineKinds, pointKinds, type Site } from '../../../src/site/types.ts';
import { canonicalText, writeSite } from '../../../src/site/write.ts';
import { cleanFeatures, feature, file, point, polygon, square } from './make.ts';

/** The site as after an edit that changed nothing: no text to fall back on. */
function touched(text: string): Site {
  const { site } = readSite(text, 'x.geojson');
  const { readFrom: _, ...rest } = site!;
  return rest;
}

/** JSON members under keys the format does not know. */
const unknown = fc.dictionary(fc.stringMatching(/^x-[a-z]{1,6}$/), fc.jsonValue({ maxDepth: 3 }), { maxKeys: 3 });
const place = fc
  .tuple(fc.integer({ min: 0, max: 5_000_000 }), fc.integer({ min: 0, max: 5_000_000 }))
  .map(([x, y]) => [-81 + x / 1e7, 41 + y / 1e7]);

const anyFeature = fc.record({
  shape: fc.constantFrom('area', 'line', 'point', 'unknown', 'none'),
  at: place,
  to: place,
  kind: fc.nat(20),
  name: fc.string({ unit: 'binary', maxLength: 12 }),
  properties: unknown,
  extra: unknown,
  numbered: fc.boolean(),
});

const anyFile = fc.record({
  features: fc.array(anyFeature, { maxLength: 8 }),
  settings: unknown,
  extra: unknown,
  name: fc.string({ unit: 'binary', maxLength: 20 }),
});

type AnyFile = typeof anyFile extends fc.Arbitrary<infer T> ? T : never;

function asText({ features, settings, extra, name }: AnyFile): string {
  const list = features.map(({ shape, at, to, kind, properties, name: called, extra: more, numbered }, i) => {
    const geometries = {
      area: { ...more, ...polygon(square(at[0], at[1], 0.001)) },
      line: { type: 'LineString', coordinates: [at, [to[0]! + 1e-7, to[1]! + 0.5]] },
      point: { type: 'Point', coordinates: at, ...more },
      unknown: point(),
      none: null,
    };
    const kinds = {
      area: 'meadow',
      line: lineKinds[kind % lineKinds.length],
      point: pointKinds[kind % pointKinds.length],
      unknown: 'pergola',
      none: 'tree',
    };
    return feature(
      geometries[shape as 'area'],
      { ...properties, kind: kinds[shape as 'area'], name: called },
      numbered ? i : `f${i}`,
      more,
    );
  });
  return file(list, { region: 'europe', name, ...settings }, extra);
}

describe('writing', () => {
  it('gives back a clean file byte for byte, and any file of ours even after a touch', () => {
    fc.assert(
      fc.property(anyFile, (made) => {
        const text = asText(made);
        const { site, issues } = readSite(text, 'x.geojson');
        expect(issues.filter(({ severity }) => severity === 'error' || severity === 'repaired')).toEqual([]);
        expect(writeSite(site!)).toBe(text);
        const ours = writeSite(touched(text));
        expect(writeSite(readSite(ours, 'x.geojson').site!)).toBe(ours);
        expect(writeSite(touched(ours))).toBe(ours);
      }),
      { numRuns: 200, seed: 20_260_615 },
    );
  });

  it('loses no member, known or unknown, of the collection, the settings or a feature', () => {
    fc.assert(
      fc.property(anyFile, (made) => {
        const before = JSON.parse(asText(made));
        const after = JSON.parse(writeSite(touched(asText(made))));
        expect(after.features).toEqual(before.features);
        expect(after).toMatchObject({ ...before, meadowpost: before.meadowpost });
      }),
      { numRuns: 200, seed: 20_260_616 },
    );
  });

  it('keeps members of a geometry and of a line of wanted', () => {
    const settings = { region: 'europe', wanted: [{ bird: 'a', 'x-why': 'asked for', sites: 1 }] };
    const placed = { coordinates: [-81, 41], 'x-how': 'tape', type: 'Point', bbox: [-81, 41, -81, 41] };
    const after = JSON.parse(canonicalText(touched(file([feature(placed, { kind: 'post' })], settings))));
    expect(after.features[0].geometry).toEqual(placed);
    expect(after.meadowpost.wanted).toEqual(settings.wanted);
  });

  it('puts one feature on a line, kept ones in their place', () => {
    const [woods, ...rest] = cleanFeatures();
    const strange = feature(point(), { kind: 'pergola' }, 'strange');
    const text = canonicalText(touched(file([woods, strange, null, ...rest])));
    const lines = text.split('\n').filter((line) => line.includes('"Feature"') || line.startsWith('null'));
    expect(lines.map((line) => /"id":"(\w+)"/.exec(line)?.[1] ?? line)).toEqual(['w', 'strange', 'null,', 'm', 'p']);
  });

  it('keeps the digits of positions and the kind of an id', () => {
    const text = file([feature(point(-80.12345678901235, 41), { kind: 'tree' }, 7)]);
    expect(canonicalText(touched(text))).toContain('"id":7');
    expect(canonicalText(touched(text))).toContain('[-80.12345678901235,41]');
  });

  it('winds outlines as RFC 7946 says whatever an edit left', () => {
    const site = touched(file(cleanFeatures()));
    const turned = {
      ...site,
      features: [
        { ...site.features[1]!, geometry: { type: 'Polygon' as const, coordinates: [square().toReversed()] } },
      ],
    };
    expect(JSON.parse(writeSite(turned)).features[0].geometry).toEqual(polygon(square()));
  });

  it('writes a new site that opens without a repair', () => {
    const { site, issues } = readSite(writeSite(newSite('Hill', { date: '2027-01-31', units: 'metric' })), 'x');
    expect(issues.map(({ id }) => id)).toEqual(['nothing-drawn']);
    expect(site?.settings).toMatchObject({ name: 'Hill', date: '2027-01-31', units: 'metric' });
  });
});
