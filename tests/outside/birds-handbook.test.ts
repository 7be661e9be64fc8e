/** Trade figures as printed, beside the guides. Each line names where the figure was printed. */
import { describe, expect, test } from 'vitest';
import { curveAt } from '../../src/birds/curve.ts';
import { admits } from '../../src/birds/hole.ts';
import { birdById } from '../../src/birds/index.ts';

const feet = 0.3048;
const yards = 0.9144;
const inches = 25.4;
const round = (width: number) => ({ width, height: width, shape: 'round' as const });

describe('spacing, as printed', () => {
  test.each([
    ['eastern-bluebird', 80 * yards, false], // 100 yd: NRCS-NH Job Sheet 645; Kansas wildlife department
    ['eastern-bluebird', 101 * yards, true],
    ['eastern-bluebird', 150 * yards, true], // passes 100 and 125 yd
    ['mountain-bluebird', 150 * yards, false], // 200 yd: reference.com; 300 yd: enviroliteracy.org
    ['tree-swallow', 25, false], // 100 ft: Tennessee Wildlife Resources Agency
    ['tree-swallow', 31, true],
    ['tree-swallow', 40, true], // beyond the 36 m of Muldal 1985
    ['american-kestrel', 700, false], // half a mile: NRCS 649 sheet
    ['wood-duck', 150, false], // 600 ft: Polk SWCD
    ['black-capped-chickadee', 640 * feet, false], // 650 ft: a shop's table
    ['tufted-titmouse', 581 * feet, true], // 580 ft: T. Johnson 2021
  ])('%s at %d m: allowed %s', (id, apart, allowed) => {
    expect(apart >= birdById(id).spacing.same.value).toBe(allowed);
  });
});

describe('distances, as printed', () => {
  test('kestrel: over 50 yd from a woodland edge (NRCS 649 sheet)', () => {
    const hard = birdById('american-kestrel').habitat.woodsEdgeHard!.value;
    expect(40 < hard).toBe(true);
    expect(hard).toBeCloseTo(45.72, 9);
  });
  test('Tree Swallow: 100 ft from a forest edge (TWRA), 90 ft fails', () => {
    const hard = birdById('tree-swallow').habitat.woodsEdgeHard!.value;
    expect(90 * feet < hard).toBe(true);
    expect(hard).toBeCloseTo(30.48, 9);
  });
  test('Wood Duck: 100 ft from shore is inside 30–150 ft, 200 ft is not (Polk SWCD)', () => {
    const water = birdById('wood-duck').habitat.water!.value;
    for (const within of [30, 100, 150]) expect(curveAt(water, within * feet)).toBe(1);
    expect(curveAt(water, 200 * feet)).toBeLessThan(1);
  });
  test('Purple Martin: 35 ft from something taller fails 40 ft, 50 ft passes but is short of 60 ft (martin pages)', () => {
    const [least, better] = birdById('purple-martin').habitat.clearAround!.value;
    expect(35 * feet < least && 50 * feet >= least && 50 * feet < better).toBe(true);
    expect([least / feet, better / feet]).toEqual([expect.closeTo(40, 9), expect.closeTo(60, 9)]);
  });
  test('wren risk: 0 at 40 ft, full at 200 ft, half at 125 ft (nfwhc.org; Bluebirds Across Nebraska)', () => {
    const brush = birdById('eastern-bluebird').habitat.brush!.value;
    expect(curveAt(brush, 40 * feet)).toBe(0);
    expect(curveAt(brush, 125 * feet)).toBeCloseTo(0.5, 9);
    expect(curveAt(brush, 200 * feet)).toBe(1);
  });
  test('short cover outscores tall cover (65 % against 21 % of boxes used, Navara & Anderson 2011)', () => {
    const cover = birdById('eastern-bluebird').habitat.lowCoverShare.value;
    expect(curveAt(cover, 0.9)).toBeGreaterThan(curveAt(cover, 0.45));
  });
});

describe('holes, as printed', () => {
  test.each([
    ['mountain-bluebird', 1.5 * inches, false], // 1 9/16 in: highprairie.us, bestnest.com
    ['mountain-bluebird', 1.5625 * inches, true],
    ['eastern-bluebird', 1.5 * inches, true], // Farmers' Bulletin 609
    ['house-sparrow', 1.125 * inches, false], // kept out: US Fish & Wildlife Service
    ['tufted-titmouse', 1.25 * inches, true], // Farmers' Bulletin 609
    ['american-kestrel', 3 * inches, true], // Farmers' Bulletin 609
    ['eastern-screech-owl', 3 * inches, true],
    ['great-tit', 28, true], // RSPB
    ['pied-flycatcher', 28, true],
    ['eurasian-tree-sparrow', 28, true],
    ['great-tit', 25, false],
    ['blue-tit', 25, true],
    ['common-starling-europe', 45, true],
    ['common-starling-europe', 32, false],
  ])('%s through %d mm: %s', (id, width, fits) => {
    expect(admits(round(width), birdById(id))).toBe(fits);
  });
  test('floor to hole: 100 mm fails 125 mm (RSPB) and 120 mm (BTO)', () => {
    const { value, range } = birdById('blue-tit').box.holeAboveFloor;
    expect(100 < value[0] && 100 < range![0]).toBe(true);
    expect([range![0], value[0]]).toEqual([120, 125]);
  });
});

describe('a wooded yard is a chickadee’s yard, a meadow a bluebird’s', () => {
  /** Mean of the habitat curves a place is judged by: no weights, only to see which bird the curves favor. */
  const meanScore = (
    id: string,
    place: { cover: number; sight: number; edge: number; brush: number; building: number },
  ) => {
    const { habitat } = birdById(id);
    const scores = [
      curveAt(habitat.lowCoverShare.value, place.cover),
      curveAt(habitat.woodsEdge.value, place.edge),
      ...(habitat.sight ? [curveAt(habitat.sight.value, place.sight)] : []),
      ...(habitat.brush ? [curveAt(habitat.brush.value, place.brush)] : []),
      ...(habitat.building ? [curveAt(habitat.building.value, place.building)] : []),
    ];
    return scores.reduce((sum, score) => sum + score, 0) / scores.length;
  };
  const yard = { cover: 0.4, sight: 25, edge: 5, brush: 8, building: 20 };
  const meadow = { cover: 0.95, sight: 140, edge: 90, brush: 100, building: 150 };
  test('yard', () => {
    expect(meanScore('carolina-chickadee', yard)).toBeGreaterThan(0.8);
    expect(meanScore('house-wren', yard)).toBeGreaterThan(0.8);
    expect(meanScore('eastern-bluebird', yard)).toBeLessThan(0.3);
  });
  test('meadow', () => {
    expect(meanScore('eastern-bluebird', meadow)).toBeGreaterThan(0.95);
    for (const id of ['carolina-chickadee', 'house-wren', 'white-breasted-nuthatch'])
      expect(meanScore(id, meadow)).toBeLessThan(0.4);
  });
});

describe('water birds want water, not a dry lawn – even where no water was drawn and it cannot be judged', () => {
  /** Openness of a disc of these shares for a bird that brings weights of its own. */
  const disc = (id: string, shares: Record<string, number>) => {
    const { lowCover, lowCoverShare } = birdById(id).habitat;
    const counted = Object.entries(shares).reduce(
      (sum, [kind, share]) => sum + share * (lowCover!.value[kind] ?? 0),
      0,
    );
    return curveAt(lowCoverShare.value, counted);
  };
  test.each(['wood-duck', 'prothonotary-warbler'])('%s', (id) => {
    expect(disc(id, { 'short-grass': 0.7, woods: 0.2, building: 0.1 })).toBeLessThan(0.15);
    expect(disc(id, { meadow: 1 })).toBeLessThan(0.3);
    expect(disc(id, { water: 0.35, wetland: 0.25, woods: 0.4 })).toBe(1);
  });
});
