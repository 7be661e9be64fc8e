/** Woods, brush and trees from a local height raster, away from the page. The raster read last is kept, so that another threshold is quick. */
import { type Canopy, type CanopySettings, canopyFeatures } from '../../../exchange/canopy.ts';
import { readHeightRaster } from '../../../exchange/geotiff-in.ts';
import { type HeightRaster, heightAboveGround } from '../../../exchange/raster.ts';

/** `key` names the files; `surface` may be left out when the files of this key were just read. */
export interface CanopyQuestion {
  readonly key: string;
  readonly surface: Uint8Array | null;
  /** Heights of the bare ground, taken off the surface; null when the file holds heights above ground already. */
  readonly ground: Uint8Array | null;
  readonly projection: string | null;
  readonly settings: CanopySettings;
}

export type CanopyAnswer =
  | { readonly canopy: Canopy; readonly sentence: null }
  | { readonly canopy: null; readonly sentence: string; readonly asks: boolean };

const no = (sentence: string, asks = false): CanopyAnswer => ({ canopy: null, sentence, asks });

/** One finder for one worker. */
export function makeCanopyFinder(): (question: CanopyQuestion) => Promise<CanopyAnswer> {
  let kept: { key: string; raster: HeightRaster } | null = null;
  return async ({ key, surface, ground, projection, settings }) => {
    if (kept?.key !== key) {
      if (!surface) return no('The file is not open any more. Choose it again.');
      const read = await rasterOf(surface, ground, projection);
      if ('sentence' in read) return read;
      kept = { key, raster: read.raster };
    }
    return { canopy: canopyFeatures(kept.raster, settings), sentence: null };
  };
}

async function rasterOf(surface: Uint8Array, ground: Uint8Array | null, projection: string | null) {
  const options = projection ? { projection } : {};
  const top = await readHeightRaster(surface, options);
  if (!top.value) return no(said(top.issues), 'ask' in top && top.ask !== undefined);
  if (!ground) return { raster: top.value };
  const bare = await readHeightRaster(ground, options);
  if (!bare.value) return no(said(bare.issues), 'ask' in bare && bare.ask !== undefined);
  const above = heightAboveGround(top.value, bare.value);
  return typeof above === 'string' ? no(above) : { raster: above };
}

const said = (issues: readonly { readonly sentence: string; readonly fix: string }[]) =>
  issues.map(({ sentence, fix }) => `${sentence} ${fix}`).join(' ');
