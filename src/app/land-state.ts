/** What the Land place is at: which tool is in the hand, the corners put so far, what is chosen. Part of the window's one state. */
import type { Corner } from '../edits/chains.ts';
import type { AreaKind, Kind, LonLat, PointKind, SiteGeometry } from '../site/types.ts';

/** What a press on the map does. */
export type Tool =
  | { readonly does: 'draw'; readonly kind: Kind }
  | { readonly does: 'circle'; readonly kind: AreaKind }
  | { readonly does: 'split' | 'hole' | 'reshape' | 'merge' | 'cut-out'; readonly id: string };

/** Which page of the Land place is open when nothing is drawn or chosen. */
export type LandPage = 'list' | 'kinds' | 'numbers' | 'settings' | 'issues' | 'import' | 'new' | 'files';

/** A place offered on the map to be pressed: one of two tape answers, the device's own place … `radius` in metres draws a circle. */
export interface Offer {
  readonly at: LonLat;
  readonly word: string;
  readonly radius?: number;
}

export interface LandState {
  readonly page: LandPage;
  /** Null = a press chooses things. */
  readonly tool: Tool | null;
  /** Corners of the shape in progress, and those taken back from it (newest last). */
  readonly corners: readonly LonLat[];
  readonly takenBack: readonly LonLat[];
  /** The chosen corner of the chosen thing. */
  readonly corner: Corner | null;
  readonly snap: boolean;
  /** Whether a neighbor's border follows. */
  readonly shared: boolean;
  /** Whether the keyboard's cross stands on the map. */
  readonly cross: boolean;
  /** Why the last thing asked for was not done; with the place when there is one. */
  readonly trouble: { readonly sentence: string; readonly at: LonLat | null } | null;
  readonly offers: readonly Offer[];
  /** Shown on the map in dashes before they are brought in. */
  readonly preview: readonly SiteGeometry[];
  /** Where the map is asked to look: west, south, east, north. A new value is a new wish. */
  readonly look: readonly [number, number, number, number] | null;
  /** What a place found by numbers becomes when nothing is drawn or chosen. */
  readonly placed: PointKind;
  /** Whether the order for a new site is shown, and steps of it the person passed over. */
  readonly guide: boolean;
  readonly passed: readonly Kind[];
  /** Step of the walk-through; null when it is not running. */
  readonly tour: number | null;
}

export const firstLand: LandState = {
  page: 'list',
  tool: null,
  corners: [],
  takenBack: [],
  corner: null,
  snap: true,
  shared: true,
  cross: false,
  trouble: null,
  offers: [],
  preview: [],
  look: null,
  placed: 'post',
  guide: false,
  passed: [],
  tour: null,
};
