/** What importing costs: a GeoJSON near the warning limit against `JSON.parse` alone, XML formats a megabyte, and a height raster a million cells. */
import { canopyFeatures } from '../../src/exchange/canopy.ts';
import { type Exported, siteThings } from '../../src/exchange/exported.ts';
import { writeGpx } from '../../src/exchange/gpx.ts';
import { importFile } from '../../src/exchange/import.ts';
import { writeKml } from '../../src/exchange/kml.ts';
import { makeFrame } from '../../src/ground/frame.ts';
import { randomSite, seeded } from '../unit/exchange/random-site.ts';
import { best, figure, printTable } from './clock.ts';

const random = seeded(1);

/** 18,000 woods of 20 corners with 17 attributes each: about 23 MB. */
function bigGeojson(): string {
  const features = Array.from({ length: 18_000 }, () => {
    const [x, y] = [-81 + random() * 0.1, 41 + random() * 0.1];
    const ring = Array.from({ length: 20 }, (_, k) => {
      const reach = 0.0005 * (0.6 + random() * 0.4);
      return [x + reach * Math.cos((k / 20) * 2 * Math.PI), y + reach * Math.sin((k / 20) * 2 * Math.PI)];
    });
    const attributes = Array.from({ length: 16 }, (_, k) => [`attribute${k}`, `value ${Math.floor(random() * 1000)}`]);
    return {
      type: 'Feature',
      properties: Object.fromEntries([['natural', 'wood'], ...attributes]),
      geometry: { type: 'Polygon', coordinates: [[...ring, ring[0]]] },
    };
  });
  return JSON.stringify({ type: 'FeatureCollection', features });
}

function manyThings(): Exported {
  const things = Array.from({ length: 2000 }, (_, i) =>
    siteThings(randomSite(i + 1)).things.map((one) => ({ ...one, id: `${i}-${one.id}` })),
  );
  return { name: 'many', note: '', rounds: [], things: things.flat() };
}

function raster(side: number) {
  const frame = makeFrame([-81, 41]);
  const values = Float32Array.from({ length: side * side }, () => random() * 0.3);
  for (let wood = 0; wood < 150; wood++) {
    const [cx, cy, r, h] = [random() * side, random() * side, 5 + random() * 50, 5 + random() * 20];
    for (let y = Math.max(0, Math.floor(cy - r)); y < Math.min(side, cy + r); y++) {
      for (let x = Math.max(0, Math.floor(cx - r)); x < Math.min(side, cx + r); x++) {
        if (Math.hypot(x - cx, y - cy) < r) values[y * side + x] = h;
      }
    }
  }
  const toLonLat = (x: number, y: number) => frame.toLonLat({ x, y: -y });
  return { width: side, height: side, values, cellWidth: 1, cellHeight: 1, toLonLat };
}

const bytes = (text: string) => new TextEncoder().encode(text);
const megabytes = (file: Uint8Array) => file.length / 1024 / 1024;

const geojson = bigGeojson();
const file = bytes(geojson);
const plain = best(2, () => JSON.parse(geojson));
const whole = best(2, () => importFile(file, 'a.geojson'));
const things = manyThings();
const [kml, gpx] = [bytes(writeKml(things)), bytes(writeGpx(things))];
const kmlCost = best(2, () => importFile(kml, 'a.kml'));
const gpxCost = best(2, () => importFile(gpx, 'a.gpx'));
const side = 1000;
const canopyCost = best(2, () => canopyFeatures(raster(side)));

printTable([
  ['import of', 'size', 'ms', 'times JSON.parse of the big file'],
  ['GeoJSON, 18,000 woods', `${figure(megabytes(file))} MB`, figure(whole), figure(whole / plain)],
  ['KML', `${figure(megabytes(kml))} MB`, figure(kmlCost), figure(kmlCost / plain)],
  ['GPX', `${figure(megabytes(gpx))} MB`, figure(gpxCost), figure(gpxCost / plain)],
  ['woods of a height raster', '1 M cells', figure(canopyCost), figure(canopyCost / plain)],
]);
