/** Small shapefiles byte by byte (ESRI Shapefile Technical Description, July 1998; dBASE III). */
import { zipSync } from 'fflate';

type XY = readonly [number, number];
export type TestShape =
  | { readonly type: 1; readonly at: XY }
  | { readonly type: 3 | 5; readonly parts: readonly (readonly XY[])[] }
  | null;

function record(shape: TestShape): DataView {
  if (!shape) return new DataView(new ArrayBuffer(4));
  if (shape.type === 1) {
    const view = new DataView(new ArrayBuffer(20));
    view.setInt32(0, 1, true);
    view.setFloat64(4, shape.at[0], true);
    view.setFloat64(12, shape.at[1], true);
    return view;
  }
  const points = shape.parts.flat();
  const view = new DataView(new ArrayBuffer(44 + shape.parts.length * 4 + points.length * 16));
  view.setInt32(0, shape.type, true);
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].forEach((value, i) => {
    view.setFloat64(4 + i * 8, value, true);
  });
  view.setInt32(36, shape.parts.length, true);
  view.setInt32(40, points.length, true);
  let start = 0;
  shape.parts.forEach((part, i) => {
    view.setInt32(44 + i * 4, start, true);
    start += part.length;
  });
  points.forEach(([x, y], i) => {
    view.setFloat64(44 + shape.parts.length * 4 + i * 16, x, true);
    view.setFloat64(52 + shape.parts.length * 4 + i * 16, y, true);
  });
  return view;
}

export function shp(type: 1 | 3 | 5, shapes: readonly TestShape[]): Uint8Array {
  const records = shapes.map(record);
  const size = 100 + records.reduce((sum, one) => sum + 8 + one.byteLength, 0);
  const out = new Uint8Array(size);
  const view = new DataView(out.buffer);
  view.setInt32(0, 9994);
  view.setInt32(24, size / 2);
  view.setInt32(28, 1000, true);
  view.setInt32(32, type, true);
  let at = 100;
  records.forEach((one, i) => {
    view.setInt32(at, i + 1);
    view.setInt32(at + 4, one.byteLength / 2);
    out.set(new Uint8Array(one.buffer), at + 8);
    at += 8 + one.byteLength;
  });
  return out;
}

/** One text column. */
export function dbf(column: string, values: readonly string[]): Uint8Array {
  const width = 40;
  const bytes = values.map((value) => new TextEncoder().encode(value).slice(0, width));
  const out = new Uint8Array(65 + values.length * (width + 1) + 1).fill(32, 65);
  const view = new DataView(out.buffer);
  view.setUint8(0, 3);
  view.setUint8(1, 126);
  view.setUint8(2, 6);
  view.setUint8(3, 15);
  view.setUint32(4, values.length, true);
  view.setUint16(8, 65, true);
  view.setUint16(10, width + 1, true);
  out.set(new TextEncoder().encode(column), 32);
  out[43] = 'C'.charCodeAt(0);
  out[48] = width;
  out[64] = 13;
  bytes.forEach((value, i) => {
    out.set(value, 65 + i * (width + 1) + 1);
  });
  out[out.length - 1] = 26;
  return out;
}

/** WKT of UTM zone 17 north on WGS84, as GDAL writes .prj files. */
export const utm17 =
  'PROJCS["WGS_1984_UTM_Zone_17N",GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",500000.0],PARAMETER["False_Northing",0.0],PARAMETER["Central_Meridian",-81.0],PARAMETER["Scale_Factor",0.9996],PARAMETER["Latitude_Of_Origin",0.0],UNIT["Meter",1.0]]';

export function zipped(files: Readonly<Record<string, Uint8Array | string>>): Uint8Array {
  return zipSync(
    Object.fromEntries(
      Object.entries(files).map(([name, file]) => [
        name,
        typeof file === 'string' ? new TextEncoder().encode(file) : file,
      ]),
    ),
  );
}
