/** What every reader of a foreign format hands over, and what the door makes of it. */
import type { Geometry } from 'geojson';
import type { Issue, Kind, LonLat, SiteGeometry } from '../site/types.ts';

export type ImportFormat = 'geojson' | 'gpx' | 'kml' | 'kmz' | 'csv' | 'shapefile';

/** What a file says about a thing, by the file's own words. */
export type Attributes = Readonly<Record<string, unknown>>;

/** One thing as the file has it, unchecked. `from` names it ("wpt 3 “Gate”"). `trouble` = why it has no usable geometry. */
export interface RawFeature {
  readonly from: string;
  readonly geometry: Geometry | null;
  readonly attributes: Attributes;
  readonly trouble?: string;
  readonly repaired?: readonly string[];
}

/** Something only the person can tell. */
export type Ask =
  | { readonly what: 'projection'; readonly sentence: string; readonly hint: string }
  | { readonly what: 'columns'; readonly sentence: string; readonly columns: readonly string[] };

/** A file read but not yet checked. Refused = no features and an issue of severity error. */
export interface RawFile {
  readonly features: readonly RawFeature[];
  readonly issues: readonly Issue[];
  readonly ask?: Ask;
  /** The file's own spatial reference, when it names one that is not plain longitude and latitude. */
  readonly projection?: string;
  /** Set where positions were computed from named axes: they cannot be swapped. */
  readonly axesSure?: true;
}

export interface FeatureNote {
  readonly what: string;
  readonly why: string;
}

/** One thing whose geometry is sound: one shape a site can hold. `source` counts the things of the file from 0. */
export interface ReadFeature {
  readonly from: string;
  readonly source: number;
  readonly geometry: SiteGeometry;
  readonly attributes: Attributes;
}

/** A thing ready to become a site feature. */
export interface Draft {
  readonly from: string;
  readonly source: number;
  /** The id a file of ours gave it (pairs refer to it); null otherwise. It may be taken already. */
  readonly id: string | null;
  readonly kind: Kind;
  readonly geometry: SiteGeometry;
  readonly properties: Readonly<Record<string, unknown>>;
}

/** `read` = `kept` + `dropped.length`, always. Counted in things of the file; `made` counts drafts (a split thing makes several). */
export interface ImportReport {
  readonly read: number;
  readonly kept: number;
  readonly made: number;
  readonly dropped: readonly FeatureNote[];
  readonly repaired: readonly FeatureNote[];
}

/** What the person may have settled beforehand. */
export interface ImportOptions {
  /** EPSG code ("EPSG:32617"), WKT or proj4 text of files that do not say; for a table also a UTM zone ("17T"). */
  readonly projection?: string;
  /** Columns of a CSV: degrees, or northing (`lat`) and easting (`lon`). */
  readonly columns?: { readonly lat: string; readonly lon: string };
  /** The site's place: swapped axes show when the swapped places are near and the others are far. */
  readonly near?: LonLat;
  /** Only things that touch this box, in degrees. */
  readonly within?: readonly [west: number, south: number, east: number, north: number];
  /** Share done (0–1) and what is being done. */
  readonly onProgress?: (share: number, doing: string) => void;
}
