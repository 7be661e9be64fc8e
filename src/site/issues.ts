/** Every kind of trouble the site room names, once. `docs/file-format.md` lists the same table; a test compares them. */
import type { Issue, LonLat, Severity } from './types.ts';

interface IssueKind {
  readonly severity: Severity;
  /** What it means, in one line, for the table in the docs. */
  readonly means: string;
}

const error = (means: string): IssueKind => ({ severity: 'error', means });
const repaired = (means: string): IssueKind => ({ severity: 'repaired', means });
const warning = (means: string): IssueKind => ({ severity: 'warning', means });
const note = (means: string): IssueKind => ({ severity: 'note', means });

/** Troubles of the file as a whole: an `error` here means that no site could be opened. */
export const fileIssues = {
  'file-empty': error('The file holds nothing.'),
  'file-too-big': error('More text, features or corners than the limits allow.'),
  'file-big': warning('Over 25 MB: everything will be slow.'),
  'not-text': error('Not a text file in UTF-8 (zipped, or saved as UTF-16).'),
  'not-json': error('Another kind of file: XML, CSV, a web page …'),
  'json-broken': error('The text stops or breaks off; line and column are given.'),
  'too-deep': error('Brackets nested more than 32 deep.'),
  'two-sites': error('Two or more documents or collections in one file.'),
  'not-a-site': error('JSON, but not a GeoJSON FeatureCollection.'),
  'metres-not-degrees': error(
    'Positions look like meters (UTM), not degrees. Of the file when all are, else of the feature.',
  ),
  'lat-lon-swapped': error('Latitude and longitude look swapped. Of the file when all are, else of the feature.'),
  'site-too-wide': error('What is drawn spans more than 1 degree.'),
  'byte-order-mark': repaired('An invisible mark at the start was removed.'),
  'key-twice': repaired('A member is given twice; the last is used.'),
  'unsafe-key': repaired('A member named __proto__ was removed.'),
  'single-feature': repaired('One feature without a collection was wrapped in one.'),
  'number-not-finite': warning('NaN, Infinity or a number too large to hold was read as “not given”.'),
  'number-too-long': warning('A whole number with more digits than can be held exactly.'),
  'newer-version': warning('Made by a newer Meadowpost: opened read-only.'),
  'other-datum': warning('A `crs` member says that the positions are not WGS84.'),
  'nothing-drawn': note('The site has no features yet.'),
  'no-woods': note('No woods, tree or brush is drawn, so distance to them cannot be judged.'),
  'no-posts': note('No post is drawn; a grid can be suggested.'),
} as const satisfies Record<string, IssueKind>;

/** Troubles of one feature: an `error` keeps it in the file but out of use. */
export const featureIssues = {
  'not-a-feature': error('An entry of the list is not a GeoJSON Feature.'),
  'not-geojson': error('The first gate (geojson-validation) refuses the feature.'),
  'geometry-not-readable': error('The geometry is not built as RFC 7946 says.'),
  'wrong-geometry': error('The geometry does not fit the kind (woods need an area …).'),
  'position-not-a-number': error('A position holds something that is not a finite number.'),
  'position-out-of-range': error('A latitude beyond 90 or a longitude beyond 180.'),
  'near-pole': error('Farther than 85 degrees from the equator.'),
  'near-antimeridian': error('Within 0.01 degree of the 180 degree meridian.'),
  'far-from-the-rest': error('More than 1 degree from the middle of all else.'),
  'ring-too-short': error('An outline with fewer than 3 different corners.'),
  'ring-no-area': error('An outline that encloses no area.'),
  'ring-crosses-itself': error('An outline that crosses itself (a bow-tie is the simplest).'),
  'hole-outside': error('A hole outside its area.'),
  'hole-crosses': error('A hole whose outline crosses that of its area.'),
  'holes-overlap': error('Two holes of an area overlap.'),
  'parts-overlap': error('Two parts of one area overlap.'),
  'line-too-short': error('A line with fewer than 2 different ends.'),
  'ring-not-closed': repaired('The outline was closed.'),
  'vertex-twice': repaired('Corners standing twice in a row were joined.'),
  'ring-turned': repaired('The corners were put in the order of RFC 7946.'),
  'extra-numbers': repaired('Numbers after longitude, latitude and height were dropped.'),
  'points-split': repaired('A MultiPoint became one feature a point.'),
  'line-made-area': repaired('A closed line of an area kind became an area.'),
  'geometry-missing': repaired('The missing geometry member was added as null.'),
  'id-missing': repaired('Features without an id got one.'),
  'id-twice': repaired('An id used before was changed.'),
  'id-not-usable': repaired('An id that is neither text nor number was replaced.'),
  'kind-respelled': repaired('A kind in another spelling was understood.'),
  'kind-missing': warning('No kind: kept in the file, not used.'),
  'kind-unknown': warning('A kind nobody knows: kept in the file, not used.'),
  'property-wrong-type': warning('A property of the wrong type: the default is used.'),
  'property-out-of-range': warning('A property out of its range: the default is used.'),
  'property-not-a-choice': warning('A property that is none of its words: the default is used.'),
  'looks-swapped': warning('Lies where no nest boxes stand: latitude and longitude may be swapped.'),
  'ring-touches-itself': warning('An outline that touches itself at a corner.'),
  'area-tiny': warning('An area of less than one square meter.'),
  'area-hidden': warning('An area that lies wholly inside one that wins over it.'),
  'pair-unknown': warning('A post is paired with a post that is not there.'),
  'number-twice': warning('Two standing boxes have the same number.'),
  'not-placed': note('Listed without a place (geometry null).'),
} as const satisfies Record<string, IssueKind>;

/** Troubles of the settings: the default is used. */
export const settingIssues = {
  'settings-missing': note('No `meadowpost` member: the defaults are used.'),
  'region-missing': note('No region: eastern North America is used.'),
  'setting-wrong-type': warning('A setting of the wrong type.'),
  'setting-out-of-range': warning('A setting out of its range.'),
  'setting-not-a-choice': warning('A setting that is none of its words.'),
  'date-unreadable': warning('A date that is not YYYY-MM-DD or not in the calendar.'),
  'wanted-unreadable': warning('A line of `wanted` without a bird or with an unusable count.'),
  'wanted-twice': warning('`wanted` names a bird twice; the first is used.'),
  'order-unreadable': warning('An entry of `order` that is no id, or stands there twice.'),
  'plan-unreadable': warning('A kept plan that cannot be read, or a name that is taken.'),
  'start-unknown': warning('The start names a trailhead that is not there.'),
} as const satisfies Record<string, IssueKind>;

/** All of them by id. */
export const issueKinds = { ...fileIssues, ...featureIssues, ...settingIssues };

/** The stable words. */
export type IssueId = keyof typeof issueKinds;

/** Builds an issue with the severity its kind has. */
export function trouble(
  id: IssueId,
  where: { readonly feature?: string | null; readonly place?: LonLat | null },
  sentence: string,
  fix: string,
): Issue {
  const { feature = null, place = null } = where;
  return { id, severity: issueKinds[id].severity, feature, place, sentence, fix };
}

/** "41.2031, -81.5122": latitude first, as people say it. */
export function placeWords(place: readonly number[]): string {
  return `${(place[1] ?? 0).toFixed(4)}, ${(place[0] ?? 0).toFixed(4)}`;
}
