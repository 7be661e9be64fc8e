/** Sites people really have: unfinished, contradictory, far north. Each gets a plan or a sentence, never a stack trace or a silent zero. */
import { describe, expect, it } from 'vitest';
import { makePlan } from '../../../src/plan.ts';
import { readSite } from '../../../src/site/read.ts';

type Feature = { kind: string; at?: [number, number]; box?: [number, number, number, number]; [key: string]: unknown };

/** A site in metres around a place; boxes are [west, south, east, north]. */
function siteOf(features: Feature[], settings: Record<string, unknown> = {}, lat = 41, lon = -81) {
  const east = 1 / (111_320 * Math.cos((lat * Math.PI) / 180));
  const north = 1 / 111_132;
  const place = ([x, y]: number[]) => [lon + x * east, lat + y * north];
  const text = JSON.stringify({
    type: 'FeatureCollection',
    meadowpost: { fileVersion: 1, name: 'Try', region: 'eastern-north-america', date: '2026-03-01', ...settings },
    features: features.map(({ kind, at, box, id, ...rest }, n) => ({
      type: 'Feature',
      id: id ?? `${kind}-${n}`,
      properties: { kind, ...rest },
      geometry: at
        ? { type: 'Point', coordinates: place(at) }
        : {
            type: 'Polygon',
            coordinates: [
              [
                [box![0], box![1]],
                [box![2], box![1]],
                [box![2], box![3]],
                [box![0], box![3]],
                [box![0], box![1]],
              ].map(place),
            ],
          },
    })),
  });
  const { site, issues } = readSite(text, 'try.geojson');
  expect(issues.filter((i) => i.severity === 'error')).toEqual([]);
  return site!;
}

const lawn: Feature = { kind: 'short-grass', box: [-300, -300, 300, 300] };
const ids = (issues: readonly { id: string }[]) => issues.map((issue) => issue.id);

describe('a site with trouble', () => {
  it('with nothing drawn says what to draw first', async () => {
    const plan = await makePlan(siteOf([]));
    expect(plan.boxes).toEqual([]);
    expect(ids(plan.issues)).toContain('nothing-drawn');
  });

  it('with no woods says so and does not judge them', async () => {
    const plan = await makePlan(siteOf([lawn, { kind: 'post', at: [0, 0] }]));
    expect(ids(plan.issues)).toContain('no-woods-drawn');
    const row = plan.boxes[0].card.rows.find((r) => r.id === 'woods-edge')!;
    expect(row.score).toBeNull();
    expect(row.sentence).toMatch(/no woods/i);
    expect(plan.boxes[0].card.judged).toBeLessThan(1);
  });

  it('with a post in the pond names the pond', async () => {
    const pond: Feature = { kind: 'water', box: [-20, -20, 20, 20], name: 'Teal Pond' };
    const plan = await makePlan(
      siteOf([lawn, pond, { kind: 'post', at: [0, 0], id: 'wet' }, { kind: 'post', at: [100, 0] }]),
    );
    const out = plan.leftOut.find((left) => left.post === 'wet')!;
    expect(out.code).toBe('forbidden');
    expect(out.sentence).toContain('Teal Pond');
  });

  it('with more boxes wanted than fit says how many do', async () => {
    const posts = [0, 30, 60, 90].map((x): Feature => ({ kind: 'post', at: [x, 0] }));
    const plan = await makePlan(siteOf([lawn, ...posts], { wanted: [{ bird: 'eastern-bluebird', sites: 9 }] }));
    expect(plan.boxes.length).toBeGreaterThan(0);
    expect(plan.boxes.length).toBeLessThan(4);
    expect(plan.issues.some((issue) => /of 9 sites .* found a place: the spacing rule/.test(issue.sentence))).toBe(
      true,
    );
  });

  it('with a bird nobody knows names it and plans for the usual one', async () => {
    const plan = await makePlan(
      siteOf(
        [
          lawn,
          { kind: 'post', at: [0, 0], bird: 'dodo' },
          { kind: 'post', at: [150, 0], state: 'fixed', bird: 'dodo' },
        ],
        {
          wanted: [{ bird: 'dodo', sites: 2 }],
        },
      ),
    );
    expect(ids(plan.issues)).toContain('unknown-bird');
    expect(plan.boxes.length).toBe(2);
  });

  it('never plans for a House Sparrow', async () => {
    const plan = await makePlan(
      siteOf([lawn, { kind: 'post', at: [0, 0] }], { wanted: [{ bird: 'house-sparrow', sites: 1 }] }),
    );
    expect(ids(plan.issues)).toContain('pest-wanted');
    expect(plan.boxes.every((box) => box.bird !== 'house-sparrow')).toBe(true);
  });

  it('with every post below the least score plans none and says why', async () => {
    const woods: Feature = { kind: 'woods', box: [-300, -300, 300, 300] };
    const plan = await makePlan(
      siteOf([woods, { kind: 'post', at: [0, 0] }], {
        wanted: [{ bird: 'eastern-bluebird', sites: 1 }],
        minimumScore: 50,
      }),
    );
    expect(plan.boxes).toEqual([]);
    expect(plan.leftOut[0].code).toBe('low-score');
    expect(plan.issues.length).toBeGreaterThan(0);
  });

  it('where the sun does not set in June still answers, with finite figures', async () => {
    const plan = await makePlan(
      siteOf([lawn, { kind: 'post', at: [0, 0] }], { region: 'europe', minimumScore: 0 }, 69.6, 18.9),
    );
    const { card } = plan.boxes[0];
    expect(Number.isFinite(card.score)).toBe(true);
    expect(card.sun.hours).toBeGreaterThan(4);
    expect(card.sun.hours).toBeLessThanOrEqual(5);
  });

  it('with an island names the box nobody can reach', async () => {
    const ring: Feature[] = [
      { kind: 'water', box: [100, -60, 220, -40] },
      { kind: 'water', box: [100, 40, 220, 60] },
      { kind: 'water', box: [100, -50, 120, 50] },
      { kind: 'water', box: [200, -50, 220, 50] },
    ];
    const plan = await makePlan(
      siteOf(
        [
          lawn,
          ...ring,
          { kind: 'trailhead', at: [-100, 0] },
          { kind: 'post', at: [160, 0], id: 'island' },
          { kind: 'post', at: [0, 0] },
        ],
        { wanted: [{ bird: 'eastern-bluebird', sites: 2 }] },
      ),
    );
    const named = [
      ...plan.issues.map((i) => i.feature),
      ...plan.leftOut.filter((l) => l.code === 'unreachable').map((l) => l.post),
    ];
    expect(named).toContain('island');
  });
});
