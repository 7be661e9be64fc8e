/** A landowner's single page: the yard, the posts, and what to do this weekend. */

import { holeText } from '../../birds/hole.ts';
import type { PlannedBox } from '../../plan-types.ts';
import { scaleBar, scaleLine } from '../bars.ts';
import { facingWords } from '../compass.ts';
import { discLook } from '../disc.ts';
import { type Box, group, type Item, text } from '../display.ts';
import { type BookFacts, birdName, type Draft, guideOf } from '../facts.ts';
import { type Block, flow, heading, paragraph } from '../flow.ts';
import { drawHeader } from '../header.ts';
import { boundsOf } from '../land-things.ts';
import { marksOf, markWords, tapesTo } from '../landmarks.ts';
import { headHeight } from '../layout.ts';
import { drawMap } from '../map.ts';
import { plain, wrap } from '../measure.ts';
import { northArrow } from '../north.ts';
import { point } from '../style.ts';
import { heightWords, tapeWords } from '../units.ts';
import { viewOf } from '../view.ts';
import { fittingScale } from './index-sheet.ts';

/** Posts told one by one; a bigger plan has its check sheet and cards. */
const told = 2;

const scales = {
  us: [5, 10, 15, 20, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400, 500, 1000].map((feet) => feet * 12),
  metric: [50, 100, 150, 200, 250, 300, 400, 500, 750, 1000, 1500, 2000, 2500, 5000, 10000],
};

/** Sizes of its words, points: the largest that leaves the map its share of the page. */
const sizes = [13, 12, 11, 10, 9.5];

/** The map's least share of the page's height (upright) or width (lying). */
const mapShare = { upright: 0.5, lying: 0.58 };

/** Where map, strip and words stand; `pages` are the words of each page. All in mm. */
interface Layout {
  readonly window: Box;
  readonly strip: Box;
  readonly pages: Item[][];
}

/** One page; large print may need a second for its words. */
export function landownerSheet(facts: BookFacts): Draft[] {
  const { plan, page } = facts;
  const boxes = [...plan.boxes].sort((a, b) => a.number - b.number).slice(0, told);
  const layout = layoutOf(facts, boxes);
  const scale = fittingScale(yardBounds(facts, boxes), layout.window, scales[facts.units], 8);
  return layout.pages.map((words, i) => ({
    id: i === 0 ? 'landowner' : `landowner-${i + 1}`,
    kind: 'landowner',
    title: `${plan.siteName}: this weekend`,
    page,
    numbers: i === 0 ? boxes.map((box) => box.number) : [],
    scale: i === 0 ? scale : null,
    draw: (sheet, sheets) => [
      ...head(facts, sheet, sheets),
      ...(i === 0 ? mapItems(facts, boxes, layout, scale) : []),
      ...words,
    ],
  }));
}

function head({ page, style, plan, stamp }: BookFacts, sheet: number, sheets: number): Item[] {
  const words = { siteName: plan.siteName, what: 'this weekend', below: 'To take outside.', sheet, sheets, ...stamp };
  return drawHeader({ ...page.safe, height: headHeight(style) }, words, style).items;
}

/** Words as large as leaves the map its share; then the map takes all that is left. What finds no room goes on further pages. */
function layoutOf(facts: BookFacts, boxes: readonly PlannedBox[]): Layout {
  const { style } = facts;
  const tries = style.variant === 'large-print' ? [style.text] : sizes;
  for (const size of tries) {
    const layout = layoutAt(facts, boxes, size);
    if (layout) return layout;
  }
  return layoutAt(facts, boxes, tries[tries.length - 1]!, true)!;
}

/** Null when the words at this size take more than their share; `forced` lets them run on. */
function layoutAt(facts: BookFacts, boxes: readonly PlannedBox[], size: number, forced = false): Layout | null {
  const { page, style } = facts;
  const { safe } = page;
  const lying = safe.width > safe.height;
  const top = safe.y + headHeight(style) + 2;
  const bottom = safe.y + safe.height;
  const mapWidth = lying ? safe.width * mapShare.lying : safe.width;
  const width = lying ? safe.width - mapWidth - 6 : safe.width;
  const stripHeight = stripRoom(facts, mapWidth);
  const blocks = weekend(facts, boxes, width, size);
  const tall = blocks.reduce((sum, block) => sum + block.height, 0);
  const room = bottom - top;
  const words = lying ? room : room * (1 - mapShare.upright) - stripHeight;
  if (tall > words && !forced) return null;
  const mapHeight = room - stripHeight - (lying ? 0 : Math.min(tall, words));
  const window = { x: safe.x, y: top, width: mapWidth, height: mapHeight };
  const strip = { x: safe.x, y: top + mapHeight, width: mapWidth, height: stripHeight };
  const first = lying
    ? { x: safe.x + mapWidth + 6, y: top, width, height: room }
    : { x: safe.x, y: strip.y + stripHeight, width, height: bottom - strip.y - stripHeight + 0.01 };
  // The words are as broad as on the first page: a lying one has room for two such columns.
  const across = lying ? 2 : 1;
  const rest = (i: number) => ({ x: safe.x + ((i - 1) % across) * (width + 6), y: top, width, height: room });
  const [beside = [], ...columns] = flow(blocks, (i) => (i === 0 ? first : rest(i)));
  const further = Array.from({ length: Math.ceil(columns.length / across) }, (_, i) =>
    columns.slice(i * across, (i + 1) * across).flat(),
  );
  return { window, strip, pages: [beside, ...further] };
}

/** Room of the scale bar, mm; north stands at its right. */
const barRoom = { standard: 80, large: 66 };

function northLeft({ style }: BookFacts): number {
  return style.variant === 'large-print' ? barRoom.large : barRoom.standard;
}

/** Height of the strip under the map: bar, scale in words, credit; north beside them. */
function stripRoom(facts: BookFacts, width: number): number {
  const { style, stamp } = facts;
  const left = northLeft(facts);
  const north = northArrow(0, 0, width - left, stamp.declination, style).height;
  const credit = stamp.credit ? wrap(plain(stamp.credit), left - 4, style.small).slice(0, 3).length : 0;
  return 3 + Math.max(north, style.small * point * 2.2 + 5 + (credit + 1) * style.smallLine);
}

/** Room around the posts shown: to the buildings and landmarks within this many metres. */
const yard = 60;

function yardBounds({ things }: BookFacts, boxes: readonly PlannedBox[]) {
  const posts = boxes.map((box) => box.at);
  const near = things.filter((thing) => thing.kind === 'building' || thing.kind === 'landmark');
  const close = near.filter((thing) => posts.some((p) => reach(p, thing.min, thing.max) <= yard));
  const land = things.flatMap((thing) => [thing.min, thing.max]);
  const around = posts.flatMap((p) => [
    { x: p.x - 20, y: p.y - 20 },
    { x: p.x + 20, y: p.y + 20 },
  ]);
  const all = posts.length > 0 ? [...around, ...close.flatMap((thing) => [thing.min, thing.max])] : land;
  return boundsOf(all) ?? { min: { x: -20, y: -20 }, max: { x: 20, y: 20 } };
}

function reach(p: { x: number; y: number }, min: { x: number; y: number }, max: { x: number; y: number }): number {
  return Math.hypot(Math.max(min.x - p.x, 0, p.x - max.x), Math.max(min.y - p.y, 0, p.y - max.y));
}

function mapItems(facts: BookFacts, boxes: readonly PlannedBox[], layout: Layout, scale: number): Item[] {
  const { style, plan, units } = facts;
  const bounds = yardBounds(facts, boxes);
  const middle = { x: (bounds.min.x + bounds.max.x) / 2, y: (bounds.min.y + bounds.max.y) / 2 };
  const view = viewOf(scale, middle, layout.window);
  const map = { things: facts.things, layers: facts.layers, boxes: plan.boxes, rounds: [], units, style };
  const numbers = boxes.map((box) => box.number);
  return [
    drawMap(view, map, {
      own: new Set(numbers),
      look: discLook(numbers, style.number),
      lengths: false,
      alt: `Map of the yard with ${boxes.length === 1 ? 'one post' : `${boxes.length} posts`}`,
      sheetOf: null,
    }),
    ...stripItems(facts, layout.strip, scale),
  ];
}

function stripItems(facts: BookFacts, strip: Box, scale: number): Item[] {
  const { style, stamp, units } = facts;
  const left = northLeft(facts);
  const bar = strip.y + 3 + style.small * point * 0.8 + 2.2;
  const below = bar + 2.3 + style.small * point * 0.7 + style.smallLine * 1.1;
  const credit = stamp.credit ? wrap(plain(stamp.credit), left - 4, style.small).slice(0, 3) : [];
  const rows = [scaleLine(scale, units), ...credit];
  return [
    scaleBar(strip.x + 1, bar, left - 12, scale, style),
    group(
      rows.map((words, i) => text(strip.x, below + i * style.smallLine, words, style.small)),
      { tag: 'P' },
    ),
    northArrow(strip.x + left, strip.y + 3, strip.width - left, stamp.declination, style).item,
  ];
}

function weekend(facts: BookFacts, boxes: readonly PlannedBox[], width: number, size: number): Block[] {
  const { style, plan } = facts;
  if (boxes.length === 0)
    return [
      heading('No post yet', style),
      paragraph('Draw the mown ground and the woods first, then let posts be suggested.', width, style, '', size),
    ];
  const say = (lead: string, words: string) => paragraph(words, width, style, lead, size);
  const more = plan.boxes.length - boxes.length;
  return [
    heading(boxes.length === 1 ? 'The post' : 'The two posts', style),
    ...boxes.map((box) => say(`Box ${box.number}, ${birdName(box)}.`, postWords(facts, box))),
    ...(more > 0 ? [say('', `${more} more in this plan: see the map sheets.`)] : []),
    heading('What to do', style),
    say('1.', 'Call the utility-locating service (811 in the US) and wait for its marks. Look up for wires.'),
    say('2.', 'Stand where the tapes meet and look the way the hole will face: open ground, no road.'),
    say(
      '3.',
      'Drive the rebar half its length, slip the pole over it, hang the guard, then the box. Eye protection on.',
    ),
    say('4.', 'Turn the box to its facing with a compass, fix it, open and shut the door once.'),
    say('5.', 'Write the date here: ____________ and look in once a week in the season, in mild, dry weather.'),
    heading('Weakest point', style),
    ...boxes.map((box) => say(`Box ${box.number}:`, weakest(box))),
  ];
}

function postWords({ units, stamp, things }: BookFacts, box: PlannedBox): string {
  const tapes = tapesTo(box.at, marksOf(things));
  const where = tapes
    ? markWords(box.at, tapes)
        .map((words, i) => `${tapeWords(tapes.metres[i]!, units)} from ${plain(words)}`)
        .join(' and ')
    : 'See the map, and its card for the coordinates';
  const guide = guideOf(box);
  const hole = guide
    ? `Hole ${holeText(guide.box.hole, units)}, ${heightWords(box.holeHeight, units)} up`
    : `Hole ${heightWords(box.holeHeight, units)} up`;
  const needle = stamp.declination ? ' by compass' : ' from true north';
  return `${where}. ${hole}, faces ${facingWords(box, stamp.declination)}${needle}.`;
}

function weakest({ card }: PlannedBox): string {
  const row = card.rows.find((one) => one.id === card.weakest[0]);
  return row ? plain(row.sentence) : 'nothing stands out.';
}
