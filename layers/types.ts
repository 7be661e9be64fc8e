/** The shape of a layer file: see README.md beside this file for what each member means. */

export type ThemeName = 'light' | 'dark' | 'sunlight';

/** One stroke or shape. `stroke` and `fill` are color names (`none`, `mark`, `ground`, `outline`, `halo`, …). */
export interface Part {
  /** Absolute M L Q C Z only; px, x right, y down, around 0,0. */
  readonly path: string;
  readonly stroke: string;
  readonly fill: string;
  /** px; 0 when not stroked. */
  readonly width: number;
}

export interface Mark {
  /** How far the drawing goes from its middle, px. */
  readonly reach: number;
  readonly parts: readonly Part[];
}

/** Marks over a repeating square tile of `tile` px. */
export interface Pattern {
  readonly tile: number;
  readonly seed: number;
  readonly layout: 'scatter' | 'grid' | 'rows';
  /** Marks in the tile (scatter) or on each row (rows). */
  readonly count: number;
  /** Rows layout: rows in a tile, and by how many of them a row climbs over one tile to the right. */
  readonly rows?: number;
  readonly climb?: number;
  readonly turn?: readonly [number, number];
  readonly size?: readonly [number, number];
  readonly marks: readonly Mark[];
}

export interface Icon {
  /** Side of the square it is drawn in, px. */
  readonly size: number;
  readonly parts: readonly Part[];
}

export interface Along {
  /** px between two drawings. */
  readonly every: number;
  readonly parts: readonly Part[];
}

/** A MapLibre layer without its source, with `$` names still to be looked up. */
export interface LayerRow {
  readonly id: string;
  readonly type: 'fill' | 'line' | 'symbol' | 'circle';
  readonly slot: string;
  readonly filter?: unknown;
  readonly minzoom?: number;
  readonly maxzoom?: number;
  readonly layout?: Readonly<Record<string, unknown>>;
  readonly paint?: Readonly<Record<string, unknown>>;
}

export interface LegendRow {
  /** Key of the app's words for kinds. */
  readonly word: string;
  readonly swatch: 'area' | 'line' | 'point';
  /** Ids of the layers whose paint makes the swatch, bottom first. */
  readonly layers: readonly string[];
}

export interface PrintLine {
  /** mm */
  readonly width: number;
  readonly color: string;
  /** mm */
  readonly dash?: readonly number[];
}

/** Lengths in mm on paper. */
export interface PrintStyle {
  readonly fill: string | null;
  readonly pattern: { readonly scale: number; readonly width: number } | null;
  readonly lines: readonly PrintLine[];
  readonly icon: { readonly scale: number; readonly crown?: boolean } | null;
  readonly along: { readonly scale: number; readonly every: number } | null;
  readonly name: { readonly face: 'italic' | 'regular'; readonly size: number; readonly halo: number } | null;
}

export interface Subject {
  readonly id: string;
  readonly about: string;
  readonly kinds: readonly string[];
  readonly colors: Readonly<Record<ThemeName, Readonly<Record<string, string>>>>;
  readonly pattern?: Pattern | null;
  readonly icon?: Icon | null;
  /** More icons by name: `$icon:NAME` in a layer. */
  readonly icons?: Readonly<Record<string, Icon>>;
  readonly along?: Along | null;
  readonly layers: readonly LayerRow[];
  readonly legend: readonly LegendRow[];
  readonly print: PrintStyle;
}

/** `slots` bottom first; inside a slot subjects are drawn in the order of `subjects`. */
export interface Order {
  readonly slots: readonly string[];
  readonly subjects: readonly string[];
}
