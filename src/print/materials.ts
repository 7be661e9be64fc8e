/** What the whole plan needs, with the arithmetic: boxes by hole size, boards, poles, guards, plates, screws. */
import type { BirdGuide } from '../birds/guide.ts';
import { holeText } from '../birds/hole.ts';
import type { PlannedBox } from '../plan-types.ts';
import type { Units } from '../site/types.ts';
import { boards, type Cut, chooseBoard, packBoards } from './boards.ts';
import { guideOf } from './facts.ts';
import { inchFraction } from './units.ts';

/** Boxes of one build: same floor, depth and hole. */
export interface Build {
  readonly hole: string;
  readonly birds: readonly string[];
  readonly boxes: readonly number[];
  /** Inside floor and depth, mm. */
  readonly floor: readonly [number, number];
  readonly depth: number;
  /** Pieces of one box. */
  readonly cuts: readonly Cut[];
}

/** Boards of one width: pieces of all boxes laid into boards, with waste on top. */
export interface BoardNeed {
  readonly board: string;
  /** Length in all, mm, cuts included. */
  readonly used: number;
  readonly boards: number;
  /** Boards to buy: packed ones and the waste share, rounded up. */
  readonly buy: number;
}

/** A line of the shopping list with how its figure came about. */
export interface Need {
  readonly what: string;
  readonly count: string;
  readonly how: string;
}

export interface Materials {
  readonly builds: readonly Build[];
  readonly boards: readonly BoardNeed[];
  readonly needs: readonly Need[];
  /** Boxes whose bird has no guide: not counted. */
  readonly unknown: readonly number[];
  readonly standing: number;
}

/** Share added to boards for knots, splits and miscuts (ours; 10 % is common practice). */
export const waste = 0.1;

/** Screws for one box: 4 to each side, 4 floor, 4 back to pole, 3 roof; nails as hinge apart (ours). */
const screws = { perBox: 19, how: '4 + 4 sides, 4 floor, 3 roof, 4 to the pole' };

/** Counts new boxes only: a standing one needs nothing but a look. */
export function materialsOf(boxes: readonly PlannedBox[], units: Units): Materials {
  const fresh = boxes.filter((box) => box.state === 'new');
  const unknown = fresh.filter((box) => !guideOf(box)).map((box) => box.number);
  const builds = buildsOf(fresh, units);
  const built = builds.reduce((sum, build) => sum + build.boxes.length, 0);
  return {
    builds,
    boards: boardNeeds(builds, units),
    needs: needsOf(builds, built, fresh.length),
    unknown,
    standing: boxes.length - fresh.length,
  };
}

function buildsOf(boxes: readonly PlannedBox[], units: Units): Build[] {
  const groups = new Map<string, { guide: BirdGuide; boxes: PlannedBox[] }>();
  for (const box of boxes) {
    const guide = guideOf(box);
    if (!guide) continue;
    const { hole, floor, depth } = guide.box;
    const key = JSON.stringify([hole.value, floor.value, depth.value]);
    const group = groups.get(key) ?? { guide, boxes: [] };
    group.boxes.push(box);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ guide, boxes: some }) => {
    const depth = (guide.box.depth.value[0] + guide.box.depth.value[1]) / 2;
    return {
      hole: holeText(guide.box.hole, units),
      birds: [...new Set(some.map((box) => guideOf(box)?.name ?? box.bird))],
      boxes: some.map((box) => box.number),
      floor: guide.box.floor.value,
      depth,
      cuts: cutsOf(guide.box.floor.value, depth, units),
    };
  });
}

/** Fixing strip of the back above and below, roof over the front and over each side, mm (front: at least 2 in, NRCS-FL; rest ours). */
const over = { back: 100, front: 60, side: 25 };

/** Pieces of one box: front and back stand between the sides, the sides run past them, the roof covers all. */
export function cutsOf([width, deep]: readonly [number, number], depth: number, units: Units): Cut[] {
  const { thick, list } = boards[units];
  const side = deep + 2 * thick;
  return [
    chooseBoard('front', width, depth, list, false),
    chooseBoard('back', width, depth + over.back, list, false),
    chooseBoard('side', side, depth, list, false),
    chooseBoard('side', side, depth, list, false),
    chooseBoard('floor', width, deep, list, true),
    chooseBoard('roof', width + 2 * thick + 2 * over.side, side + over.front, list, true),
  ];
}

function boardNeeds(builds: readonly Build[], units: Units): BoardNeed[] {
  const { length, list } = boards[units];
  return list.flatMap((board) => {
    const lengths = builds.flatMap((build) =>
      build.boxes.flatMap(() =>
        build.cuts.filter((cut) => cut.board === board).flatMap((cut) => Array<number>(cut.strips).fill(cut.along)),
      ),
    );
    const packed = packBoards(lengths, length);
    if (packed.boards === 0) return [];
    const buy = Math.ceil(packed.boards * (1 + waste) - 1e-9);
    return [{ board: board.name, used: packed.used, boards: packed.boards, buy }];
  });
}

function needsOf(builds: readonly Build[], built: number, fresh: number): Need[] {
  const holes = new Map<string, number>();
  for (const build of builds) holes.set(build.hole, (holes.get(build.hole) ?? 0) + build.boxes.length);
  const plates = [...holes].map(
    ([hole, count]): Need => ({
      what: `metal hole plate, ${hole}`,
      count: String(count),
      how: `1 a box × ${count} (against chewing: TWRA, RSPB)`,
    }),
  );
  return [
    {
      what: 'pole: smooth conduit 1/2–3/4 in (13–19 mm)',
      count: String(fresh),
      how: `1 a new box × ${fresh}, pairs count two; as long as the hole is high (TWRA)`,
    },
    { what: 'rebar 3–4 ft (0.9–1.2 m) for the pole', count: String(fresh), how: `1 a pole × ${fresh} (TWRA)` },
    {
      what: 'pipe or sheet for guards, 24 in × 7–8 in (61 × 20 cm)',
      count: String(fresh),
      how: `1 a pole × ${fresh}; a cone must be 36 in (91 cm) wide or more`,
    },
    ...plates,
    {
      what: 'wood screws 1 5/8 in (40 mm)',
      count: String(Math.ceil((built * screws.perBox * (1 + waste)) / 10) * 10),
      how: `${built} boxes × ${screws.perBox} (${screws.how}), 10 % more, to the next ten`,
    },
    {
      what: 'door: 2 nails as hinge and 1 screw or pin',
      count: `${built * 2} + ${built}`,
      how: `${built} boxes × 2 and × 1`,
    },
    { what: 'straps or screws box to conduit', count: String(fresh * 2), how: `2 a pole × ${fresh}` },
  ];
}

/** A length in the sheet's units: inches with fractions, or mm. */
export function cutWords(millimetres: number, units: Units): string {
  return units === 'us' ? inchFraction(millimetres / 25.4).replace(' ', '\u00a0') : String(Math.round(millimetres));
}
