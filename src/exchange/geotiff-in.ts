/** GeoTIFF in a known projection: a raster of heights, or a picture with its corners. The one file that knows the TIFF library; nothing is fetched. */
import { fromArrayBuffer, type GeoTIFFImage } from 'geotiff';
import type { Issue, LonLat } from '../site/types.ts';
import type { Ask } from './import-types.ts';
import { fileIssue } from './issue.ts';
import { importLimits } from './limits.ts';
import { type Projection, readProjection } from './projection.ts';
import type { HeightRaster } from './raster.ts';

/** A picture ready for an image source: RGBA rows from the top, corners top left, top right, bottom right, bottom left. */
export interface GeoPicture {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8ClampedArray;
  readonly corners: readonly [LonLat, LonLat, LonLat, LonLat];
}

export type GeoTiffAnswer<T> = { readonly value: T; readonly issues: readonly Issue[] } | Refusal;

/** Reads the heights of one band (0 = first). `projection` stands in when the file does not name a known one. */
export async function readHeightRaster(
  bytes: Uint8Array,
  options: { readonly projection?: string; readonly band?: number } = {},
): Promise<GeoTiffAnswer<HeightRaster>> {
  return opened<HeightRaster>(bytes, options.projection, async (image, place) => {
    const band = options.band ?? 0;
    if (band < 0 || band >= image.getSamplesPerPixel())
      return failed('no-band', `The file has no band ${band + 1}.`, 'Choose another band.');
    const [samples] = (await image.readRasters({ samples: [band] })) as unknown as [ArrayLike<number>];
    const noData = image.getGDALNoData();
    const values = Float32Array.from(samples, (value) =>
      value === noData || !Number.isFinite(value) ? Number.NaN : value,
    );
    const [width, height] = [image.getWidth(), image.getHeight()];
    const size = cellSize(place, width, height);
    return size
      ? { value: { width, height, values, ...size, toLonLat: place }, issues: [] }
      : failed('outside-projection', 'The raster lies where its projection has no places.', 'Check its projection.');
  });
}

/** Reads a picture of 8-bit colors or greys. */
export async function readGeoPicture(
  bytes: Uint8Array,
  options: { readonly projection?: string } = {},
): Promise<GeoTiffAnswer<GeoPicture>> {
  return opened<GeoPicture>(bytes, options.projection, async (image, place) => {
    const [width, height] = [image.getWidth(), image.getHeight()];
    const corners = [place(0, 0), place(width, 0), place(width, height), place(0, height)];
    const [a, b, c, d] = corners;
    if (!a || !b || !c || !d)
      return failed(
        'outside-projection',
        'The picture lies where its projection has no places.',
        'Check its projection.',
      );
    const rgb = (await image.readRGB({ interleave: true })) as unknown as ArrayLike<number>;
    return { value: { width, height, rgba: withAlpha(rgb, width * height), corners: [a, b, c, d] }, issues: [] };
  });
}

type PlaceOf = (column: number, row: number) => LonLat | null;

async function opened<T>(
  bytes: Uint8Array,
  chosen: string | undefined,
  read: (image: GeoTIFFImage, place: PlaceOf) => Promise<GeoTiffAnswer<T>>,
): Promise<GeoTiffAnswer<T>> {
  try {
    const tiff = await fromArrayBuffer(bytes.slice().buffer);
    const image = await tiff.getImage(0);
    const cells = image.getWidth() * image.getHeight();
    if (!(cells > 0) || cells > importLimits.mostPixels) {
      const sentence = `The file has ${image.getWidth()} × ${image.getHeight()} cells; at most ${importLimits.mostPixels.toLocaleString('en-US')} are read.`;
      return failed('file-too-big', sentence, 'Cut it to the site first.');
    }
    const projection = projectionOf(image, chosen);
    if (!projection) return askProjection(image, chosen);
    const place = placeIn(image, projection);
    return place
      ? await read(image, place)
      : failed(
          'no-place',
          'The file does not say where on the ground it lies.',
          'Lay it down by control points instead.',
        );
  } catch (error) {
    return failed(
      'tiff-broken',
      `The file could not be read as a TIFF: ${error instanceof Error ? error.message.slice(0, 150) : error}.`,
      'Save it again as an ordinary GeoTIFF.',
    );
  }
}

/** 32767 is the standard's word for "user-defined" (OGC GeoTIFF 1.1). */
const userDefined = 32767;

function epsgOf(image: GeoTIFFImage): number | null {
  const keys = image.getGeoKeys() ?? {};
  const code = Number(keys.ProjectedCSTypeGeoKey ?? keys.GeographicTypeGeoKey ?? Number.NaN);
  return Number.isInteger(code) && code !== userDefined && code > 0 ? code : null;
}

function projectionOf(image: GeoTIFFImage, chosen: string | undefined): Projection | null {
  const code = epsgOf(image);
  return (
    (code === null ? null : readProjection(`EPSG:${code}`)) ?? (chosen === undefined ? null : readProjection(chosen))
  );
}

function askProjection(image: GeoTIFFImage, chosen: string | undefined): Refusal {
  const code = epsgOf(image);
  const named =
    code === null
      ? 'The file does not name its projection'
      : `The file is drawn in EPSG:${code}, which is not known here`;
  const sentence = `${named}${chosen === undefined ? '' : ', and the one you gave is not known'}.`;
  const hint = 'Give an EPSG code such as EPSG:32617 (UTM zone 17 north), or its definition as WKT or proj4 text.';
  return {
    value: null,
    issues: [fileIssue('error', 'projection-unknown', sentence, hint)],
    ask: { what: 'projection', sentence, hint },
  };
}

/** Column and row to longitude and latitude by tie point and cell size, or by the full transformation. */
function placeIn(image: GeoTIFFImage, projection: Projection): PlaceOf | null {
  const matrix = image.fileDirectory.getValue('ModelTransformation') as ArrayLike<number> | undefined;
  const tie = image.fileDirectory.getValue('ModelTiepoint') as ArrayLike<number> | undefined;
  const scale = image.fileDirectory.getValue('ModelPixelScale') as ArrayLike<number> | undefined;
  // PixelIsPoint: the tie point is the middle of the cell (OGC GeoTIFF 1.1, 7.1.2).
  const half = image.getGeoKeys()?.GTRasterTypeGeoKey === 2 ? 0.5 : 0;
  if (tie && tie.length >= 6 && scale && scale.length >= 2) {
    const [i, j, , x, y] = Array.from(tie);
    return (column, row) =>
      projection.toLonLat(x! + (column - half - i!) * scale[0]!, y! - (row - half - j!) * scale[1]!);
  }
  if (!matrix || matrix.length < 8) return null;
  const [a, b, , c, d, e, , f] = Array.from(matrix);
  return (column, row) =>
    projection.toLonLat(a! * (column - half) + b! * (row - half) + c!, d! * (column - half) + e! * (row - half) + f!);
}

/** Size of the middle cell on a sphere: good to half a percent. */
function cellSize(place: PlaceOf, width: number, height: number): { cellWidth: number; cellHeight: number } | null {
  const [column, row] = [Math.floor(width / 2), Math.floor(height / 2)];
  const [at, right, down] = [place(column, row), place(column + 1, row), place(column, row + 1)];
  if (!at || !right || !down) return null;
  const metres = (a: LonLat, b: LonLat) =>
    111_195 * Math.hypot(a[1] - b[1], (a[0] - b[0]) * Math.cos((a[1] * Math.PI) / 180));
  return { cellWidth: metres(at, right), cellHeight: metres(at, down) };
}

function withAlpha(rgb: ArrayLike<number>, cells: number): Uint8ClampedArray {
  const rgba = new Uint8ClampedArray(cells * 4);
  for (let i = 0; i < cells; i++) {
    rgba[i * 4] = rgb[i * 3]!;
    rgba[i * 4 + 1] = rgb[i * 3 + 1]!;
    rgba[i * 4 + 2] = rgb[i * 3 + 2]!;
    rgba[i * 4 + 3] = 255;
  }
  return rgba;
}

type Refusal = { readonly value: null; readonly issues: readonly Issue[]; readonly ask?: Ask };

function failed(id: string, sentence: string, fix: string): Refusal {
  return { value: null, issues: [fileIssue('error', id, sentence, fix)] };
}
