declare module 'shpjs' {
  import type { Geometry } from 'geojson';
  /** Geometries in file order, null for an empty shape. Throws on a damaged file. */
  export function parseShp(shp: Uint8Array | DataView, prj?: string | false): (Geometry | null)[];
  /** Rows in file order. Throws on a damaged file. */
  export function parseDbf(dbf: Uint8Array | DataView, cpg?: string | Uint8Array): Record<string, unknown>[];
}
