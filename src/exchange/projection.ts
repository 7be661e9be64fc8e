/** Foreign spatial references to longitude and latitude. The one file that reads codes, WKT and .prj; the projecting is proj4's. */
import proj4, { type Converter } from 'proj4';
import type { LonLat } from '../site/types.ts';
import { definition } from './utm.ts';

/** A spatial reference that can be turned into longitude and latitude. `degrees` = it is already (WGS84 or as good as). */
export interface Projection {
  readonly name: string;
  readonly degrees: boolean;
  /** Null when the position is none (not finite, or outside what the projection can do). */
  toLonLat(x: number, y: number): LonLat | null;
  fromLonLat(position: LonLat): readonly [number, number] | null;
}

/** NAD83 and ETRS89 lie within about two metres of WGS84; they are read as WGS84 (common practice at trail scale). */
function knownCode(code: number): string | null {
  if ([4326, 4269, 4258, 4979].includes(code)) return '+proj=longlat +datum=WGS84 +no_defs';
  if ([3857, 900913, 3785, 102100].includes(code)) {
    return '+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m +nadgrids=@null +no_defs';
  }
  if (code >= 32601 && code <= 32660) return definition(code - 32600, false);
  if (code >= 32701 && code <= 32760) return definition(code - 32700, true);
  if (code >= 25828 && code <= 25838) return definition(code - 25800, false);
  if (code >= 26901 && code <= 26923) return definition(code - 26900, false);
  return null;
}

/** Reads "EPSG:32617", 32617, a CRS URN or address, `CRS84`, WKT (a .prj) or proj4 text; null when it is not known. */
export function readProjection(text: string): Projection | null {
  const name = text.trim();
  if (name === '' || name.length > 10_000) return null;
  if (/CRS:?84$/i.test(name)) return build('WGS84 longitude and latitude', knownCode(4326)!);
  const code =
    /^(?:EPSG:|urn:ogc:def:crs:EPSG:[^:]*:|https?:\/\/www\.opengis\.net\/def\/crs\/EPSG\/[^/]*\/)?(\d{4,6})$/i.exec(
      name,
    );
  if (code) return codeProjection(Number(code[1]));
  return /^(\+proj=|PROJCS|GEOGCS|PROJCRS|GEOGCRS|GEODCRS|BOUNDCRS|COMPD_CS|COMPOUNDCRS)/i.test(name)
    ? build(wktName(name), name)
    : null;
}

function codeProjection(code: number): Projection | null {
  const found = knownCode(code);
  return found ? build(`EPSG:${code}`, found) : null;
}

function wktName(text: string): string {
  return /^[A-Z_]+\s*\[\s*"([^"]{1,80})"/i.exec(text)?.[1]?.replaceAll('_', ' ') ?? 'the projection given';
}

function build(name: string, text: string): Projection | null {
  try {
    const converter = proj4(text, 'EPSG:4326');
    const projection = wrap(name, converter, alreadyDegrees(text));
    return projection.toLonLat(0, 0) || projection.toLonLat(500_000, 4_500_000) ? projection : null;
  } catch {
    return null;
  }
}

/** Longitude and latitude on a datum that is read as WGS84: nothing to compute. */
function alreadyDegrees(text: string): boolean {
  return /^\+proj=longlat \+datum=WGS84|^GEO[A-Z]+\s*\[\s*"[^"]*(WGS|NAD_?83|North_American_1983|ETRS|CRS:?84)/i.test(
    text,
  );
}

function wrap(name: string, converter: Converter, degrees: boolean): Projection {
  const attempt = (go: () => number[]): [number, number] | null => {
    try {
      const [a, b] = go();
      return Number.isFinite(a) && Number.isFinite(b) ? [a!, b!] : null;
    } catch {
      return null;
    }
  };
  return {
    name,
    degrees,
    toLonLat: (x, y) => (Number.isFinite(x) && Number.isFinite(y) ? attempt(() => converter.forward([x, y])) : null),
    fromLonLat: ([lon, lat]) => attempt(() => converter.inverse([lon, lat])),
  };
}
