/** The site as the program holds it: what the file says, checked, with nothing the file said thrown away. */
import type { LineString, MultiLineString, MultiPolygon, Point, Polygon } from 'geojson';
import type { KeptPlan } from './kept-plan.ts';

/** WGS84 longitude and latitude in degrees, in that order (RFC 7946). */
export type LonLat = [lon: number, lat: number];

/** Kinds of land, finer first: where areas overlap the kind that stands earlier here wins. Off-limits and boundary are rules, not cover. */
export const coverKinds = [
  'building',
  'water',
  'paved',
  'woods',
  'brush',
  'orchard',
  'wetland',
  'crop',
  'meadow',
  'short-grass',
] as const;
/** Kinds that say what may be done somewhere, and cover nothing. */
export const ruleKinds = ['off-limits', 'boundary'] as const;
/** All kinds drawn as areas. */
export const areaKinds = [...coverKinds, ...ruleKinds] as const;
/** All kinds drawn as lines. */
export const lineKinds = ['path', 'road', 'fence', 'hedge', 'overhead-wire', 'stream'] as const;
/** All kinds drawn as points. */
export const pointKinds = ['tree', 'shrub', 'perch', 'feeder', 'trailhead', 'landmark', 'post'] as const;

/** A kind of land. */
export type CoverKind = (typeof coverKinds)[number];
/** A kind drawn as an area. */
export type AreaKind = (typeof areaKinds)[number];
/** A kind drawn as a line. */
export type LineKind = (typeof lineKinds)[number];
/** A kind drawn as a point. */
export type PointKind = (typeof pointKinds)[number];
/** Any kind. */
export type Kind = AreaKind | LineKind | PointKind;

/** The geometries a feature of a site can have. */
export type SiteGeometry = Polygon | MultiPolygon | LineString | MultiLineString | Point;

/**
 * One thing on the land. `properties` is the file's own object, known and unknown members alike (read known ones through
 * `properties.ts`); `extra` holds the feature's foreign members. `geometry` is null for a thing listed but not yet placed.
 */
export interface SiteFeature {
  readonly id: string;
  readonly kind: Kind;
  readonly geometry: SiteGeometry | null;
  readonly properties: Readonly<Record<string, unknown>>;
  readonly extra?: Readonly<Record<string, unknown>>;
  /** True when the file gives the id as a number: it is written back as one. */
  readonly numberId?: true;
}

/** A feature the file holds that is not used for measuring (unknown kind, broken outline …): written back untouched in its place. */
export interface KeptFeature {
  /** How many of the used features stand before it in the file. */
  readonly before: number;
  /** The file's own JSON value. */
  readonly feature: unknown;
  /** Id of the issue that says why it is not used. */
  readonly issue: string;
}

/** Feet, yards and acres, or meters and hectares. */
export type Units = 'us' | 'metric';
/** A place to judge, a standing box, or one no longer used. */
export type PostState = 'candidate' | 'fixed' | 'retired';

/** Which way round a walk goes, seen from above. */
export type WalkDirection = 'clockwise' | 'counterclockwise';

/** How many sites are wanted for one bird; `paired` counts two boxes close together as one site. */
export interface Wanted {
  readonly bird: string;
  readonly sites: number;
  readonly paired?: boolean;
}

/** What the person set for the whole site: the file's one foreign member, `meadowpost`. Unknown members are kept in `extra`. */
export interface SiteSettings {
  readonly fileVersion: 1;
  readonly name: string;
  readonly units: Units;
  /** Which bird guides apply: a region id of `birds/guide.ts` (the guides, not this room, know the list). */
  readonly region: string;
  readonly wanted: readonly Wanted[];
  /** Degrees clockwise from true north that storms come from; null when not known (then the storm takes no part). */
  readonly stormFrom: number | null;
  /** Mean daily maximum in July, °C, as the person entered it; null when not known. */
  readonly julyMaximum: number | null;
  readonly box: 'pale' | 'natural' | 'dark';
  /** Feature id of the trailhead the round starts at; null = the first trailhead in the file. */
  readonly start: string | null;
  /** Which way round the walk goes; null = whichever the search gives. Needs a trailhead. */
  readonly direction: WalkDirection | null;
  /** ISO date the plan is made for; the season's sun and the needle's declination are those of this year. */
  readonly date: string;
  /** Spacing in metres of a suggested grid of candidates; null = only drawn candidates. */
  readonly suggestGrid: number | null;
  /** Suggested candidates stay within this many metres of a path; null = anywhere allowed. */
  readonly reachOfPaths: number | null;
  /** Posts scoring less (0–100) are not chosen. */
  readonly minimumScore: number;
  /** Longest round in metres; null = no limit. */
  readonly walkLimit: number | null;
  /** Minutes spent at each box. */
  readonly minutesPerBox: number;
  readonly walkers: number;
  readonly seed: number;
  /** Criterion id → weight, where the person changed the default. */
  readonly weights: Readonly<Record<string, number>>;
  /** "criterion.setting" or "bird.path" → value in the figure's own unit, where the person changed the default. */
  readonly figures: Readonly<Record<string, number>>;
  /** Post ids in the walking order a person set by hand, which numbers them; empty = the shortest walk. Holds for one walker. */
  readonly order: readonly string[];
  /** Plans kept by name. */
  readonly plans: readonly KeptPlan[];
  readonly extra?: Readonly<Record<string, unknown>>;
}

/**
 * `extra` holds the collection's other foreign members in file order; `kept` the features that are saved but not used.
 * `readFrom` is the very text the site was read from: only `readSite` sets it, every edit drops it, and `writeSite` returns it,
 * so that open-and-save of a clean file changes no byte.
 */
export interface Site {
  readonly settings: SiteSettings;
  readonly features: readonly SiteFeature[];
  readonly extra?: Readonly<Record<string, unknown>>;
  readonly kept?: readonly KeptFeature[];
  readonly readFrom?: { readonly text: string };
}

/** error: not usable; repaired: mended; warning: a default is used or something looks wrong; note: good to know. */
export type Severity = 'error' | 'repaired' | 'warning' | 'note';

/** Trouble in a person's data, with where it is and what to do. Never thrown. */
export interface Issue {
  /** Stable word for the kind of trouble, such as `ring-crosses-itself`. */
  readonly id: string;
  readonly severity: Severity;
  /** Feature id or "feature 12" (counted from 1) when it has none; null when it is the file's. */
  readonly feature: string | null;
  readonly place: LonLat | null;
  readonly sentence: string;
  readonly fix: string;
}
