/** Small invented sites for the browser tests. */

const degree = 111_195;
const at = (x: number, y: number) => [(x / degree) * 1.305, 40 + y / degree];
const ring = (...corners: [number, number][]) => [
  [...corners, corners[0] as [number, number]].map(([x, y]) => at(x, y)),
];

const feature = (id: string, geometry: unknown, properties: Record<string, unknown>) => ({
  type: 'Feature',
  id,
  geometry,
  properties,
});
const area = (id: string, kind: string, name: string, ...corners: [number, number][]) =>
  feature(id, { type: 'Polygon', coordinates: ring(...corners) }, { kind, ...(name ? { name } : {}) });
const post = (id: string, x: number, y: number) =>
  feature(id, { type: 'Point', coordinates: at(x, y) }, { kind: 'post', state: 'candidate' });

const site = (name: string, features: unknown[], wanted: unknown[]) =>
  JSON.stringify({
    type: 'FeatureCollection',
    meadowpost: {
      fileVersion: 1,
      name,
      units: 'metric',
      region: 'eastern-north-america',
      wanted,
      date: '2026-06-15',
      minimumScore: 0,
    },
    features,
  });

/** 500 m by 300 m of grass and meadow with woods at its north side and three posts. */
export const smallSite = site(
  'Test meadow',
  [
    area('grass', 'short-grass', 'Mown Field', [-250, -150], [0, -150], [0, 100], [-250, 100]),
    area('meadow', 'meadow', 'Tall Field', [0, -150], [250, -150], [250, 100], [0, 100]),
    area('woods', 'woods', 'North Woods', [-250, 100], [250, 100], [250, 150], [-250, 150]),
    area('brush', 'brush', '', [180, -150], [250, -150], [250, -90], [180, -90]),
    feature('start', { type: 'Point', coordinates: at(-240, -140) }, { kind: 'trailhead', name: 'Gate' }),
    post('p1', -160, -20),
    post('p2', -20, -40),
    post('p3', 120, -30),
  ],
  [{ bird: 'eastern-bluebird', sites: 3 }],
);

/** A site with nothing in it. */
export const emptySite = site('Nothing yet', [], []);
