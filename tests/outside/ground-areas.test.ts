/**
 * Areas on the site's frame against the geodesic. SOURCE: Planimeter of GeographicLib C++ 2.1.2 on WGS84, made-up outlines the size of
 * habitat patches, counter-clockwise [lat, lon]; areas in m² to 0.1.
 */
import { describe, expect, it } from 'vitest';
import { ringArea } from '../../src/geometry/ring.ts';
import { makeFrame } from '../../src/ground/frame.ts';
import { prepareGround } from '../../src/ground/prepare.ts';
import { defaultSettings } from '../../src/site/defaults.ts';
import type { LonLat, Site } from '../../src/site/types.ts';

// biome-ignore format: figures
const cases: readonly { area: number; outline: readonly (readonly [lat: number, lon: number])[] }[] = [
  { area: 27085.2, outline: [
    [-20.85281517, 26.59798144], [-20.85253707, 26.59804205], [-20.8522481, 26.59795484], [-20.85225925, 26.59756385],
    [-20.85185699, 26.59743485], [-20.85177727, 26.59708317], [-20.85191938, 26.59675473], [-20.85228924, 26.59665711],
    [-20.85243472, 26.59642291], [-20.85268768, 26.59635766], [-20.85293506, 26.59640636], [-20.85313933, 26.59653422],
    [-20.85344029, 26.5965594], [-20.85363436, 26.59679068], [-20.85383186, 26.59708505], [-20.85360929, 26.59739039],
    [-20.8536695, 26.59777248], [-20.85330999, 26.59785551], [-20.85304046, 26.59787747],
  ] },
  { area: 3532.9, outline: [
    [13.50563804, 50.34555677], [13.505806, 50.34556389], [13.50596332, 50.34545784], [13.50597011, 50.3452647],
    [13.50591893, 50.34509792], [13.50578842, 50.34499684], [13.50563804, 50.34496293], [13.50550507, 50.34502783],
    [13.5053389, 50.34508708], [13.50535987, 50.3452647], [13.50535539, 50.34543253], [13.50551462, 50.34548456],
  ] },
  { area: 2333.3, outline: [
    [23.5459805, -65.80996227], [23.54615287, -65.81007422], [23.54620089, -65.8102559], [23.5462449, -65.81046481],
    [23.54606477, -65.81055083], [23.54590409, -65.8105273], [23.54571646, -65.81046458], [23.54579096, -65.81026183],
    [23.54582568, -65.81009702],
  ] },
  { area: 60124.9, outline: [
    [40.13138955, -42.90951914], [40.13167484, -42.91036507], [40.13223625, -42.90995046], [40.13260806, -42.9103038],
    [40.13282909, -42.91083581], [40.13270866, -42.91144546], [40.132479, -42.91189999], [40.13248394, -42.91240117],
    [40.13229389, -42.91284953], [40.13189678, -42.91295237], [40.13159657, -42.91337117], [40.13124055, -42.91286767],
    [40.13090743, -42.91288417], [40.1305649, -42.91273718], [40.13041249, -42.91231256], [40.13003941, -42.91197781],
    [40.13037011, -42.91147484], [40.13019486, -42.91096149], [40.13030057, -42.91043891], [40.13083373, -42.91050849],
    [40.13107043, -42.91022163],
  ] },
  { area: 149489.9, outline: [
    [20.23256857, -17.10708451], [20.2339653, -17.10760953], [20.23429555, -17.10905902], [20.23444539, -17.1105384],
    [20.23330698, -17.11154575], [20.23195862, -17.11116958], [20.23044499, -17.11069024], [20.23072903, -17.10903787],
    [20.23129958, -17.10777179],
  ] },
  { area: 58991.5, outline: [
    [-19.65367509, -70.67844384], [-19.65294153, -70.67913539], [-19.6524055, -70.67991432], [-19.65262074, -70.68103389],
    [-19.65367509, -70.68113166], [-19.65476032, -70.68106669], [-19.65498168, -70.67991432], [-19.65457201, -70.67896191],
  ] },
];

describe('areas against the geodesic', () => {
  for (const { area, outline } of cases) {
    const ring = outline.map(([lat, lon]): LonLat => [lon, lat]);
    // The published figure is rounded to 0.1 m²; the frame's own error near its centre is below 1e-6.
    const tolerance = 0.05 + 2e-6 * area;

    it(`${area} m² at ${outline[0]![0].toFixed(1)}°: the ring on a frame 2 km off`, () => {
      const frame = makeFrame([ring[0]![0] + 0.01, ring[0]![1] + 0.015]);
      expect(Math.abs(Math.abs(ringArea(ring.map((p) => frame.toPlane(p)))) - area)).toBeLessThan(tolerance);
    });

    it(`${area} m² at ${outline[0]![0].toFixed(1)}°: the share of a disc that holds it`, () => {
      const site: Site = {
        settings: { ...defaultSettings, name: 'Test' },
        features: [
          { id: 'a', kind: 'woods', geometry: { type: 'Polygon', coordinates: [[...ring, ring[0]!]] }, properties: {} },
        ],
      };
      const radius = 2000;
      const { woods } = prepareGround(site).shares({ x: 0, y: 0 }, radius);
      expect(Math.abs(woods * Math.PI * radius * radius - area)).toBeLessThan(tolerance);
    });
  }
});
