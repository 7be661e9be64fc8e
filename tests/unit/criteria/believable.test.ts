/** Who would live here, as a naturalist would see it; and the words of a card where nothing is near or much is not drawn. */
import { describe, expect, it } from 'vitest';
import { birdById } from '../../../src/birds/index.ts';
import { scorePost } from '../../../src/criteria/card.ts';
import { woodsEdge } from '../../../src/criteria/woods-edge.ts';
import { rectangle, type Shape } from '../ground/plane-site.ts';
import { judged, make, post } from './fixture.ts';

const box = (kind: string, x0: number, y0: number, x1: number, y1: number) =>
  ({ kind, rings: [rectangle(x0, y0, x1, y1)] }) as Shape;

function who(shapes: readonly Shape[], region: string, centre: [number, number], bird: string) {
  const { ground, suns } = make(shapes, { region }, centre);
  const { who: rows } = scorePost(ground, post(), birdById(bird), suns);
  return { first: rows[0]!.bird, of: (id: string) => rows.find((row) => row.bird === id)!.score };
}
const east = (shapes: readonly Shape[]) => who(shapes, 'eastern-north-america', [-83, 40], 'eastern-bluebird');
const europe = (shapes: readonly Shape[]) => who(shapes, 'europe', [6, 51], 'great-tit');

const marsh = [
  box('meadow', -300, -300, 30, 300),
  box('wetland', 30, -300, 300, 300),
  box('woods', -500, -300, -300, 300),
];
const farm = [box('crop', -300, -300, 300, 300), box('building', -60, -10, -40, 10)];
const woods = [box('woods', -300, -300, 300, 300)];

describe('who would live here', () => {
  it('is the swallow at a marsh edge and no duck in dry woods', () => {
    expect(east(marsh).first).toBe('tree-swallow');
    expect(east(woods).of('wood-duck')).toBeLessThan(50);
    expect(east(woods).of('prothonotary-warbler')).toBeLessThan(50);
    expect(east(woods).of('tufted-titmouse')).toBeGreaterThan(75);
  });

  it('is no titmouse or owl in a farmyard without a tree, and no House Sparrow in a marsh without a house', () => {
    for (const bird of ['tufted-titmouse', 'eastern-screech-owl', 'carolina-chickadee', 'great-crested-flycatcher'])
      expect(east(farm).of(bird), bird).toBeLessThan(45);
    expect(europe(farm).first).toBe('house-sparrow-europe');
    expect(europe(marsh).of('house-sparrow-europe')).toBeLessThan(50);
  });
});

describe('the words of a card', () => {
  it('say how far off a thing is at least where the ground is drawn without it', () => {
    const made = make([box('crop', -300, -300, 300, 300)]);
    const tit = judged(woodsEdge, made, 'tufted-titmouse');
    expect(tit.raw).toBe(160);
    expect(tit.sentence).toBe('No woods or trees within 160 m, wants to be inside');
    // A bird of open land is not praised for what nobody drew.
    expect(judged(woodsEdge, made, 'eastern-bluebird').score).toBeNull();
  });

  it('name a lone tree, the post at the very edge, and the inside', () => {
    const tree = make([{ kind: 'tree', at: [20, 0], height: 8 } as unknown as Shape]);
    if (tree.ground.has('woods-edge'))
      expect(judged(woodsEdge, tree, 'eastern-bluebird').sentence).toContain('Nearest tree 20 m off');
    const edge = make([box('woods', 0, -300, 300, 300)]);
    expect(judged(woodsEdge, edge, 'eastern-bluebird', post(-0.01)).sentence).toContain('Woods edge at the post');
    expect(judged(woodsEdge, edge, 'eastern-bluebird', post(12)).sentence).toContain('12 m inside the woods');
  });

  it('tell of the polar summer, and count half a drawn disc as half judged', () => {
    const polar = make([box('short-grass', -300, -300, 300, 300)], {}, [20, 70]);
    expect(scorePost(polar.ground, post(), birdById('eastern-bluebird'), polar.suns).sun.sentence).toContain(
      'Polar summer',
    );
    const judgedOf = (shapes: readonly Shape[]) => {
      const { ground, suns } = make(shapes);
      return scorePost(ground, post(), birdById('eastern-bluebird'), suns).judged;
    };
    const half = box('short-grass', -300, -300, 0, 300);
    expect(judgedOf([half])).toBeLessThan(0.6 * judgedOf([half, box('short-grass', 0, -300, 300, 300)]));
  });
});
