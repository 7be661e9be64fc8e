/** 1,000 random sites out and back through each format: nothing is lost that the format can hold. */
import type { Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import { writePlacesCsv } from '../../../src/exchange/csv.ts';
import { siteThings } from '../../../src/exchange/exported.ts';
import { writeGpx } from '../../../src/exchange/gpx.ts';
import { importFile } from '../../../src/exchange/import.ts';
import type { Draft } from '../../../src/exchange/import-types.ts';
import { writeKml } from '../../../src/exchange/kml.ts';
import { positionsOf } from '../../../src/exchange/project-geometry.ts';
import { oneLine } from '../../../src/exchange/safe-text.ts';
import { shapeOf } from '../../../src/site/kinds.ts';
import type { Site, SiteFeature } from '../../../src/site/types.ts';
import { writeSite } from '../../../src/site/write.ts';
import { randomSite } from './random-site.ts';

const sites = Array.from({ length: 1000 }, (_, i) => randomSite(i + 1));

function back(text: string, name: string): readonly Draft[] {
  const { features, report, issues } = importFile(new TextEncoder().encode(text), name);
  expect(report.read).toBe(report.kept + report.dropped.length);
  expect(issues.filter((issue) => issue.severity === 'error')).toEqual([]);
  return features;
}

/** Same positions in the same order, to 1e-7 degrees. */
function expectSamePlaces(draft: Draft, feature: SiteFeature): void {
  const [got, want] = [positionsOf(draft.geometry), positionsOf(feature.geometry!)];
  expect(got.length, feature.id).toBe(want.length);
  const far = got.filter((position, i) => !near(position, want[i]!));
  expect(far, feature.id).toEqual([]);
}

function near(a: Position, b: Position): boolean {
  return Math.abs(a[0]! - b[0]!) <= 1.0001e-7 && Math.abs(a[1]! - b[1]!) <= 1.0001e-7;
}

function expectSameMembers(draft: Draft, feature: SiteFeature, but: readonly string[] = []): void {
  for (const [key, value] of Object.entries(feature.properties)) {
    if (but.includes(key)) continue;
    const got = draft.properties[key];
    // A name is one line in every format but GeoJSON; unknown members come back as text.
    const same = key === 'name' ? oneLine(got) === oneLine(value) : String(got) === String(value).trim();
    expect(same, `${feature.id} ${key}: ${JSON.stringify(got)} for ${JSON.stringify(value)}`).toBe(true);
  }
}

const placed = (site: Site) => site.features.filter((feature) => feature.geometry);

describe('1,000 random sites out and back', () => {
  it('site GeoJSON keeps everything', () => {
    for (const site of sites.filter((one) => one.features.length > 0)) {
      const drafts = back(writeSite(site), 'site.geojson');
      expect(drafts.map(({ id, kind, geometry, properties }) => ({ id, kind, geometry, properties }))).toEqual(
        placed(site).map(({ id, kind, geometry, properties }) => ({ id, kind, geometry, properties })),
      );
    }
  });

  it('KML keeps shapes, kinds, names, notes, ids and every plain member', () => {
    for (const site of sites) {
      const drafts = back(writeKml(siteThings(site)), 'site.kml');
      const want = placed(site);
      expect(drafts.map((draft) => [draft.id, draft.kind])).toEqual(want.map((feature) => [feature.id, feature.kind]));
      drafts.forEach((draft, i) => {
        expectSamePlaces(draft, want[i]!);
        expectSameMembers(draft, {
          ...want[i]!,
          properties: {
            name: siteThings(site).things.find((thing) => thing.id === draft.id)!.name,
            ...want[i]!.properties,
          },
        });
      });
    }
  });

  it('GPX keeps points and lines with kind, whole name and note', () => {
    for (const site of sites) {
      const drafts = back(writeGpx(siteThings(site)), 'site.gpx');
      const holds = placed(site).filter((feature) => shapeOf(feature.kind) !== 'area');
      // Waypoints stand before tracks in the file.
      const want = [
        ...holds.filter((one) => shapeOf(one.kind) === 'point'),
        ...holds.filter((one) => shapeOf(one.kind) === 'line'),
      ];
      expect(drafts.map((draft) => draft.kind)).toEqual(want.map((feature) => feature.kind));
      drafts.forEach((draft, i) => {
        expectSamePlaces(draft, want[i]!);
        const { name, note, number } = want[i]!.properties;
        expectSameMembers(draft, {
          ...want[i]!,
          properties: {
            ...(name === undefined ? {} : { name }),
            ...(note === undefined ? {} : { note }),
            ...(number === undefined ? {} : { number }),
          },
        });
      });
    }
  });

  it('CSV keeps places with kind, name, note, id and every plain member', () => {
    for (const site of sites) {
      const points = placed(site).filter((feature) => shapeOf(feature.kind) === 'point');
      if (points.length === 0) continue;
      const drafts = back(writePlacesCsv(siteThings(site)), 'site.csv');
      expect(drafts.map((draft) => [draft.id, draft.kind])).toEqual(
        points.map((feature) => [feature.id, feature.kind]),
      );
      drafts.forEach((draft, i) => {
        expectSamePlaces(draft, points[i]!);
        expectSameMembers(draft, points[i]!);
      });
    }
  });
});
