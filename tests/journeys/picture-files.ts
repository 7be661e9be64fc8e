/** Small invented pictures as files: a PNG, a tile pack and GeoTIFFs, made in the test so that none need be kept. */
import { crc32, deflateSync } from 'node:zlib';
import { writeArrayBuffer } from 'geotiff';
import { zxyToTileId } from 'pmtiles';
import { toUtm } from '../../src/exchange/utm.ts';
import type { LonLat } from '../../src/site/types.ts';

/** Red, green, blue of a pixel, 0–255. */
export type Paint = (x: number, y: number) => readonly [number, number, number];

/** A PNG (RFC 2083) of 8-bit colors. */
export function png(width: number, height: number, paint: Paint): Buffer {
  const rows = Buffer.alloc(height * (1 + 3 * width));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) rows.set(paint(x, y), y * (1 + 3 * width) + 1 + 3 * x);
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    part('IHDR', head),
    part('IDAT', deflateSync(rows)),
    part('IEND', Buffer.alloc(0)),
  ]);
}

function part(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(data.length, 0);
  body.copy(whole, 4);
  whole.writeUInt32BE(crc32(body), body.length + 4);
  return whole;
}

/** A PMTiles file (specification version 3) of one picture on every tile of one zoom that touches the box around a place. */
export function tilePack(tile: Buffer, zoom: number, [lon, lat]: LonLat, reach: number, credit: string): Buffer {
  const [west, north] = tileOf([lon - reach, lat + reach], zoom);
  const [east, south] = tileOf([lon + reach, lat - reach], zoom);
  const ids: number[] = [];
  for (let x = west; x <= east; x++) for (let y = north; y <= south; y++) ids.push(zxyToTileId(zoom, x, y));
  ids.sort((a, b) => a - b);
  const directory = Buffer.from([
    ...varint(ids.length),
    ...ids.flatMap((id, i) => varint(id - (ids[i - 1] ?? 0))),
    ...ids.flatMap(() => varint(1)),
    ...ids.flatMap(() => varint(tile.length)),
    ...ids.flatMap(() => varint(1)),
  ]);
  const metadata = Buffer.from(JSON.stringify({ attribution: credit }));
  const head = Buffer.alloc(127);
  head.write('PMTiles', 'latin1');
  head[7] = 3;
  const starts = [127, directory.length, 127 + directory.length, metadata.length, 0, 0];
  const tiles = 127 + directory.length + metadata.length;
  for (const [i, value] of [...starts, tiles, tile.length, ids.length, ids.length, 1].entries())
    head.writeBigUInt64LE(BigInt(value), 8 + 8 * i);
  head.set([0, 1, 1, 2, zoom, zoom], 96);
  for (const [i, value] of [lon - reach, lat - reach, lon + reach, lat + reach].entries())
    head.writeInt32LE(Math.round(value * 1e7), 102 + 4 * i);
  head[118] = zoom;
  head.writeInt32LE(Math.round(lon * 1e7), 119);
  head.writeInt32LE(Math.round(lat * 1e7), 123);
  return Buffer.concat([head, directory, metadata, tile]);
}

function tileOf([lon, lat]: LonLat, zoom: number): [number, number] {
  const side = 2 ** zoom;
  const y = Math.asinh(Math.tan((lat * Math.PI) / 180)) / Math.PI;
  return [Math.floor(((lon + 180) / 360) * side), Math.floor(((1 - y) / 2) * side)];
}

function varint(value: number): number[] {
  const bytes: number[] = [];
  for (let rest = value; ; rest = Math.floor(rest / 128)) {
    if (rest < 128) return [...bytes, rest];
    bytes.push((rest % 128) + 128);
  }
}

/** A GeoTIFF in UTM of the place's zone (EPSG:326xx), cells of `cell` metres, its middle at the place. Three values a cell make a picture. */
export function geoTiff(
  values: Float32Array | Uint8Array,
  size: { readonly width: number; readonly height: number; readonly cell: number },
  middle: LonLat,
  code?: number,
): Buffer {
  const zone = Math.floor((middle[0] + 180) / 6) + 1;
  const utm = toUtm(middle, zone)!;
  const { width, height, cell } = size;
  const colors = values instanceof Uint8Array;
  const metadata = {
    width,
    height,
    ModelPixelScale: [cell, cell, 0],
    ModelTiepoint: [0, 0, 0, utm.easting - (width * cell) / 2, utm.northing + (height * cell) / 2, 0],
    GTModelTypeGeoKey: 1,
    GTRasterTypeGeoKey: 1,
    ProjectedCSTypeGeoKey: code ?? 32600 + zone,
    ...(colors
      ? {
          PhotometricInterpretation: 2,
          SamplesPerPixel: 3,
          BitsPerSample: [8, 8, 8],
          SampleFormat: [1, 1, 1],
          PlanarConfiguration: 1,
        }
      : {}),
  };
  return Buffer.from(writeArrayBuffer(values, metadata as Parameters<typeof writeArrayBuffer>[1]) as ArrayBuffer);
}
