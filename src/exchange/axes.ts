/** Whether a file's numbers are longitude and latitude at all: swapped axes, and metres taken for degrees, are caught here. */
import type { Geometry, Position } from 'geojson';
import { allKinds } from '../site/kinds.ts';
import type { Issue, LonLat } from '../site/types.ts';
import type { Ask, ImportOptions, RawFeature, RawFile } from './import-types.ts';
import { fileIssue } from './issue.ts';
import { positionsOf, projectGeometry, swapGeometry } from './project-geometry.ts';
import { readProjection } from './projection.ts';

export interface Placed {
  readonly features: readonly RawFeature[];
  readonly issues: readonly Issue[];
  readonly ask?: Ask;
}

/** Kilometres from the site beyond which an import is probably not of the site (ours). */
const farKilometres = 200;

/** Latitude of the Antarctic Treaty's area (Article VI), degrees. */
const antarctic = -60;

/** The features in longitude and latitude. */
export function placedFeatures(file: RawFile, options: ImportOptions): Placed {
  if (file.axesSure) return { features: file.features, issues: farAway(samplePositions(file.features), options.near) };
  const reference = file.projection ?? null;
  const stated = reference === null ? null : readProjection(reference);
  if (stated?.degrees) return inDegrees(file.features, options);
  const chosen = stated ?? (options.projection === undefined ? null : readProjection(options.projection));
  const sample = samplePositions(file.features);
  if (reference === null && !looksLikeMetres(sample)) return inDegrees(file.features, options);
  if (!chosen) return askWhich(reference, options.projection);
  if (chosen.degrees) return inDegrees(file.features, options);
  const features = changed(file.features, (geometry) => projectGeometry(geometry, chosen));
  const sentence = `Positions were turned from ${chosen.name} into longitude and latitude.`;
  return {
    features,
    issues: [fileIssue('note', 'projected', sentence, 'Check that the things lie where they should.')],
  };
}

function askWhich(reference: string | null, tried: string | undefined): Placed {
  const what =
    reference === null
      ? 'The numbers are no longitudes and latitudes; they look like meters'
      : `The file says it is drawn in ${reference.slice(0, 60)}, which is not known`;
  const sentence = `${what}${tried === undefined ? '' : ', and the projection you gave is not known'}.`;
  const hint = 'Give its EPSG code, such as EPSG:32617 for UTM zone 17 north, or export it again as WGS84 (EPSG:4326).';
  return {
    features: [],
    issues: [fileIssue('error', 'projection-unknown', sentence, hint)],
    ask: { what: 'projection', sentence, hint },
  };
}

function inDegrees(features: readonly RawFeature[], options: ImportOptions): Placed {
  const sample = samplePositions(features);
  const why = swappedBecause(sample, options.near) ?? (isOurs(features) ? null : fromAntarctica(sample));
  const turned = why === null ? features : changed(features, swapGeometry);
  const issues = why === null ? [] : [swapIssue(why)];
  const places = why === null ? sample : sample.map(([a, b]) => [b!, a!]);
  return { features: turned, issues: [...issues, ...farAway(places, options.near)] };
}

function changed(features: readonly RawFeature[], change: (geometry: Geometry) => Geometry): RawFeature[] {
  return features.map((feature) =>
    feature.geometry ? { ...feature, geometry: safely(feature.geometry, change) } : feature,
  );
}

/** A geometry too broken to change stays as it is; the checks name it. */
function safely(geometry: Geometry, change: (geometry: Geometry) => Geometry): Geometry {
  try {
    return change(geometry);
  } catch {
    return geometry;
  }
}

function samplePositions(features: readonly RawFeature[]): Position[] {
  const step = Math.max(1, Math.floor(features.length / 500));
  return features
    .filter((feature, i) => i % step === 0 && feature.geometry)
    .flatMap((feature) => safePositions(feature.geometry!).slice(0, 20))
    .filter(([x, y]) => Number.isFinite(x) && Number.isFinite(y));
}

function safePositions(geometry: Geometry): Position[] {
  try {
    return positionsOf(geometry);
  } catch {
    return [];
  }
}

/** More than half of the positions cannot be degrees in either order. */
function looksLikeMetres(sample: readonly Position[]): boolean {
  const out = sample.filter(
    ([x, y]) => Math.max(Math.abs(x!), Math.abs(y!)) > 360 && Math.max(Math.abs(x!), Math.abs(y!)) < 3e7,
  );
  return out.length > sample.length / 2;
}

function swappedBecause(sample: readonly Position[], near: LonLat | undefined): string | null {
  if (sample.length === 0) return null;
  const fits = (lon: number, lat: number) => Math.abs(lat) <= 90 && Math.abs(lon) <= 180;
  const asIs = sample.filter(([x, y]) => fits(x!, y!)).length;
  const swapped = sample.filter(([x, y]) => fits(y!, x!)).length;
  // One row beyond the poles is a slip of the pen; most rows are a swap.
  if (asIs < sample.length / 2 && swapped === sample.length) return 'latitudes would be beyond the poles';
  if (!near) return null;
  const place = middle(sample);
  const [here, there] = [kilometres(near, place), kilometres(near, [place[1], place[0]])];
  return here > farKilometres && there < 50 ? 'only then they lie near the site' : null;
}

/** Longitudes of eastern America taken for latitudes: nobody has nest boxes in Antarctica. */
function fromAntarctica(sample: readonly Position[]): string | null {
  const lies = ([x, y]: Position) => y! < antarctic && x! > antarctic && x! <= 90;
  return sample.length > 0 && sample.every(lies) ? 'latitudes would be in Antarctica' : null;
}

/** A file we wrote has its axes right, wherever it lies. */
function isOurs(features: readonly RawFeature[]): boolean {
  return features.some(({ attributes }) => [attributes.kind, attributes.type].some((kind) => own.has(kind)));
}

const own = new Set<unknown>(allKinds);

function swapIssue(why: string): Issue {
  const sentence = `Latitude and longitude were swapped in the file and have been exchanged, because ${why}.`;
  return fileIssue('repaired', 'lat-lon-swapped', sentence, 'Look at the preview; undo the import if it is wrong.');
}

function farAway(sample: readonly Position[], near: LonLat | undefined): Issue[] {
  if (!near || sample.length === 0) return [];
  const away = kilometres(near, middle(sample));
  const sentence = `The things lie about ${Math.round(away).toLocaleString('en-US')} km from the site.`;
  return away > farKilometres
    ? [fileIssue('warning', 'far-from-site', sentence, 'Check that this is the right file and projection.')]
    : [];
}

function middle(sample: readonly Position[]): LonLat {
  const median = (axis: 0 | 1) =>
    sample.map((place) => place[axis]!).sort((a, b) => a - b)[Math.floor(sample.length / 2)]!;
  return [median(0), median(1)];
}

/** Great-circle distance on a sphere of 6,371 km: good to half a percent, enough to tell near from far. */
function kilometres([lon1, lat1]: LonLat, [lon2, lat2]: LonLat): number {
  const rad = Math.PI / 180;
  const half =
    Math.sin(((lat2 - lat1) * rad) / 2) ** 2 +
    Math.cos(lat1 * rad) * Math.cos(lat2 * rad) * Math.sin(((lon2 - lon1) * rad) / 2) ** 2;
  return 2 * 6371 * Math.asin(Math.sqrt(Math.min(1, half)));
}
