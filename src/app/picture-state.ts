/** What lies under the drawing: pictures, where they lie, and what is being done with them. Part of the window's one state. */

import type { Canopy, CanopySettings } from '../exchange/canopy.ts';
import type { PictureSource } from '../exchange/url-template.ts';
import type { LonLat } from '../site/types.ts';

/** Top left, top right, bottom right, bottom left. */
export type Corners = readonly [LonLat, LonLat, LonLat, LonLat];

/** A place of the picture (pixels from its top left) and where it lies on the ground. */
export interface Tie {
  readonly pixel: readonly [number, number];
  readonly ground: LonLat;
}

export type Fitting = 'similarity' | 'affine';

interface Common {
  readonly id: string;
  readonly name: string;
  readonly credit: string;
  /** 0–1. */
  readonly opacity: number;
  readonly shown: boolean;
}

/** A picture of this device: photo, scanned plan, GeoTIFF. Its bytes are in the picture shelf under its id. */
export interface PlacedPicture extends Common {
  readonly kind: 'placed';
  readonly width: number;
  readonly height: number;
  readonly corners: Corners;
  readonly ties: readonly Tie[];
  readonly fitting: Fitting;
}

/** Pictures of a server the person named. Nothing is asked of it before `agreed`. */
export interface ServedPictures extends Common {
  readonly kind: 'served';
  readonly source: PictureSource;
  readonly agreed: boolean;
}

/** A PMTiles file of this device; it is too large to be kept, so it is chosen again in each window. */
export interface TiledPictures extends Common {
  readonly kind: 'tiles';
  readonly leastZoom: number;
  readonly mostZoom: number;
  readonly bounds: readonly [number, number, number, number];
}

export type GroundPicture = PlacedPicture | ServedPictures | TiledPictures;

/** The picture's own tool: none, its corners are dragged, or places are tied (`pixel` = pressed in the picture, waiting for the ground). */
export type PictureTool =
  | { readonly does: 'corners'; readonly id: string; readonly corner: number }
  | { readonly does: 'tie'; readonly id: string; readonly pixel: readonly [number, number] | null };

/** Woods found in a height raster, shown before they are kept. */
export interface WoodsPreview {
  readonly name: string;
  readonly settings: CanopySettings;
  readonly canopy: Canopy;
}

export interface PictureState {
  readonly open: boolean;
  readonly of: string | null;
  readonly list: readonly GroundPicture[];
  readonly tool: PictureTool | null;
  readonly working: string | null;
  readonly trouble: string | null;
  readonly woods: WoodsPreview | null;
}

export const firstPictures: PictureState = {
  open: false,
  of: null,
  list: [],
  tool: null,
  working: null,
  trouble: null,
  woods: null,
};
