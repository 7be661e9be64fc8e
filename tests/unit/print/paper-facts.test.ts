import { describe, expect, test } from 'vitest';
import { cutLoss, packBoards } from '../../../src/print/boards.ts';
import { fieldCautions } from '../../../src/print/cautions.ts';
import { compassOf } from '../../../src/print/compass.ts';
import { textsOf } from '../../../src/print/display.ts';
import { edgeTicks, gridZone } from '../../../src/print/grid.ts';
import { tapesTo } from '../../../src/print/landmarks.ts';
import { makeSheets } from '../../../src/print/make-sheets.ts';
import { cutsOf, materialsOf } from '../../../src/print/materials.ts';
import { northWords } from '../../../src/print/north.ts';
import { heightWords, inchFraction, placeWords, tapeWords, walkWords } from '../../../src/print/units.ts';
import { viewOf } from '../../../src/print/view.ts';
import { frameAt, inputOf, invented } from './fixture.ts';

describe('materials', () => {
  test('a bluebird box of 5 × 5 × 8 in is cut by hand-worked sizes', () => {
    const inch = 25.4;
    const cuts = cutsOf([5 * inch, 5 * inch], 8 * inch, 'us');
    const size = (part: string) =>
      cuts.filter((cut) => cut.part === part).map((cut) => [cut.across / inch, cut.along / inch, cut.board.name]);
    // Front 5 in needs a real 5 1/2 in board (1x6); a side is 5 + 2 × 3/4 = 6 1/2 in: 1x8 (7 1/4 in).
    expect(size('front')).toEqual([[5, 8, '1x6']]);
    expect(size('side')).toEqual([
      [6.5, 8, '1x8'],
      [6.5, 8, '1x8'],
    ]);
    expect(size('floor')[0]!.slice(0, 2)).toEqual([5, 5]);
    for (const cut of cuts) expect(cut.strips).toBe(1);
  });

  test('a wide box is joined of strips rather than forgotten', () => {
    const cuts = cutsOf([400, 400], 600, 'us');
    expect(cuts.some((cut) => cut.strips > 1)).toBe(true);
  });

  test('packing holds every piece and never more than a board', () => {
    const packed = packBoards([1200, 1200, 1200, 600, 600], 2438.4);
    // 1200 + 1200 fill one board, 1200 + 600 + 600 the next, each piece with its 5 mm cut.
    expect(packed.boards).toBe(2);
    expect(packed.used).toBe(4800 + 5 * cutLoss);
    expect(packBoards([3000], 2438.4)).toEqual({ boards: 0, used: 0, tooLong: 1 });
  });

  test('standing boxes need nothing, pairs need two poles', () => {
    const { plan } = invented({ boxes: 10, land: false });
    const list = materialsOf(plan.boxes, 'us');
    expect(list.standing).toBe(2);
    expect(list.needs[0]!.count).toBe('8');
    expect(list.builds.reduce((sum, build) => sum + build.boxes.length, 0)).toBe(8);
    const plates = list.needs.filter((need) => need.what.includes('plate'));
    expect(plates).toHaveLength(1);
    expect(plates[0]!.count).toBe('8');
  });

  test('a bird without a guide is named, not built', () => {
    const { plan } = invented({ boxes: 2, land: false });
    const list = materialsOf(
      plan.boxes.map((box) => ({ ...box, bird: 'phoenix' })),
      'metric',
    );
    expect(list.unknown).toEqual([1, 2]);
    expect(list.builds).toEqual([]);
  });
});

describe('tapes', () => {
  const at = (x: number, y: number, words: string) => ({ at: { x, y }, words });
  test('takes the two marks whose lines cross best, not the nearest two', () => {
    const tapes = tapesTo({ x: 0, y: 0 }, [at(10, 0, 'a'), at(12, 1, 'b'), at(0, 14, 'c')]);
    expect(tapes?.marks.map((mark) => mark.words)).toEqual(['a', 'c']);
    expect(tapes?.metres).toEqual([10, 14]);
    expect(tapes?.crossing).toBeCloseTo(90, 9);
  });
  test('none where lines cross too flat or are too long', () => {
    expect(tapesTo({ x: 0, y: 0 }, [at(10, 0, 'a'), at(-20, 0.5, 'b')])).toBeNull();
    expect(tapesTo({ x: 0, y: 0 }, [at(200, 0, 'a'), at(0, 200, 'b')])).toBeNull();
    expect(tapesTo({ x: 0, y: 0 }, [])).toBeNull();
  });
});

describe('north and edges', () => {
  test('compass degrees are true degrees less an east declination', () => {
    const needle = { degrees: -8, yearly: -0.05, model: 'World Magnetic Model 2025', date: '2026-03-01' };
    expect(compassOf(100, needle)).toBe(108);
    expect(compassOf(355, needle)).toBe(3);
    expect(compassOf(100, null)).toBe(100);
    expect(northWords(needle).join(' ')).toContain('points 8.0° west of true, moves 3′ a year to the west');
    expect(northWords(null).join(' ')).not.toMatch(/\d/);
  });

  test.each([
    ['Kenya, on the equator', [36.8, 0.0001], '37N'],
    ['Bergen, the wide zone of Norway', [5.3, 60.4], '32V'],
    ['Svalbard', [15.6, 78.2], '33X'],
    ['Tasmania', [147.3, -42.9], '55G'],
  ] as [string, [number, number], string][])('grid zone of %s', (_, place, zone) => {
    expect(gridZone(place)?.zone).toBe(zone);
  });

  test('beyond UTM there is no grid, and ticks of degrees stay', () => {
    expect(gridZone([10, 86])).toBeNull();
    const frame = frameAt([10, 86]);
    const view = viewOf(2400, { x: 0, y: 0 }, { x: 20, y: 20, width: 150, height: 150 });
    const ticks = edgeTicks(view, frame, null, 30);
    expect(ticks.left).toEqual([]);
    expect(ticks.right.length).toBeGreaterThan(1);
  });

  test('a tick stands where its figure says, on both sides of the equator and of Greenwich', () => {
    for (const centre of [
      [-0.0003, 0.0002],
      [36.8, -1.3],
      [-70, -33.5],
      [12, 55],
    ] as [number, number][]) {
      const frame = frameAt(centre);
      const view = viewOf(2400, { x: 0, y: 0 }, { x: 20, y: 20, width: 150, height: 150 });
      const { right } = edgeTicks(view, frame, gridZone(centre), 30);
      expect(right.length).toBeGreaterThan(1);
      for (const tick of right) {
        const [lon, lat] = frame.toLonLat(view.toGround(170, 20 + tick.at));
        expect(Number.isFinite(lon)).toBe(true);
        const [, degrees, minutes, side] = /^(\d+)°([\d.]+)′ ([NS])$/.exec(tick.words)!;
        const said = (Number(degrees) + Number(minutes) / 60) * (side === 'S' ? -1 : 1);
        expect(said).toBeCloseTo(lat, 7);
      }
    }
  });
});

describe('words of units', () => {
  test('round figures in both systems', () => {
    expect(inchFraction(1.5)).toBe('1 1/2');
    expect(inchFraction(1.5625)).toBe('1 9/16');
    expect(inchFraction(0.999)).toBe('1');
    expect(tapeWords(3.6576, 'us')).toBe('12 ft');
    expect(tapeWords(3.65, 'us')).toBe('12 ft');
    expect(tapeWords(2.5, 'metric')).toBe('2.5 m');
    expect(heightWords(1.524, 'us')).toBe('5 ft');
    expect(walkWords(91.44, 'us')).toBe('100 yd');
    expect(walkWords(1609.344, 'us')).toBe('1.0 mi');
    expect(placeWords([-0.000001, -33.5])).toEqual(['33.50000° S', '0.00000° W']);
  });
});

describe('cautions', () => {
  test('name every danger that was asked for, each with where it comes from', () => {
    const about = fieldCautions.map((one) => one.about.toLowerCase()).join(' ');
    for (const danger of ['ladder', 'wires', 'digging', 'wasps', 'mouse', 'traffic', 'livestock'])
      expect(about).toContain(danger);
    for (const one of fieldCautions) expect(one.source.length).toBeGreaterThan(5);
    const back = makeSheets(inputOf({ boxes: 5 }, { sheets: ['check'] })).filter(
      (sheet) => sheet.kind === 'check-back',
    );
    const words = back
      .flatMap((sheet) => textsOf(sheet.items))
      .map((one) => one.text)
      .join(' ');
    for (const part of ['811', 'bleach', 'protected', 'gate', 'day 12']) expect(words).toContain(part);
  });
});
