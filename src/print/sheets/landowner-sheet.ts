/** A landowner's single page: the yard, the posts, and what to do this weekend. */

import { holeText } from '../../birds/hole.ts';
import type { PlannedBox } from '../../plan-types.ts';
import { scaleBar, scaleLine } from '../bars.ts';
import { facingWords } from '../compass.ts';
import { discLook } from '../disc.ts';
import { group, type Item, text } from '../display.ts';
import { type BookFacts, birdName, type Draft, guideOf } from '../facts.ts';
import { type Block, flow, heading, paragraph } from '../flow.ts';
import { drawHeader } from '../header.ts';
import { boundsOf } from '../land-things.ts';
import { marksOf, tapesTo } from '../landmarks.ts';
import { headHeight } from '../layout.ts';
import { drawMap } from '../map.ts';
import { plain } from '../measure.ts';
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

/** One page; large print may need a second for its words. */
export function landownerSheet(facts: BookFacts): Draft[] {
  const { plan, page } = facts;
  const boxes = [...plan.boxes].sort((a, b) => a.number - b.number).slice(0, told);
  const scale = fittingScale(yardBounds(facts, boxes), mapBox(facts), scales[facts.units], 10);
  const set = setText(facts, boxes);
  return set.pages.map((words, i) => ({
    id: i === 0 ? 'landowner' : `landowner-${i + 1}`,
    kind: 'landowner',
    title: `${plan.siteName}: this weekend`,
    page,
    numbers: i === 0 ? boxes.map((box) => box.number) : [],
    scale: i === 0 ? scale : null,
    draw: (sheet, sheets) => [
      ...head(facts, sheet, sheets),
      ...(i === 0 ? [...mapItems(facts, boxes, scale), set.north] : []),
      ...words,
    ],
  }));
}

function head({ page, style, plan, stamp }: BookFacts, sheet: number, sheets: number): Item[] {
  const words = { siteName: plan.siteName, what: 'this weekend', below: 'To take outside.', sheet, sheets, ...stamp };
  return drawHeader({ ...page.safe, height: headHeight(style) }, words, style).items;
}

/** The words beside or under the map; what finds no room goes on further pages. */
function setText(facts: BookFacts, boxes: readonly PlannedBox[]): { north: Item; pages: Item[][] } {
  const { page, style, stamp } = facts;
  const { safe } = page;
  const window = mapBox(facts);
  const lying = safe.width > safe.height;
  const left = lying ? window.x + window.width + 6 : safe.x;
  const top = lying ? window.y : barBase(facts) + style.small * point + 6;
  const width = safe.x + safe.width - left;
  const bottom = safe.y + safe.height;
  const north = northArrow(left, top, width, stamp.declination, style);
  const full = safe.y + headHeight(style) + 2;
  const pages = flow(weekend(facts, boxes, width), (i) =>
    i === 0
      ? { x: left, y: top + north.height, width, height: bottom - top - north.height }
      : { x: safe.x, y: full, width: safe.width, height: bottom - full },
  );
  return { north: north.item, pages };
}

/** Where the scale bar's line is, mm from the top. */
function barBase(facts: BookFacts): number {
  const window = mapBox(facts);
  return window.y + window.height + facts.style.small * point + 4;
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

/** The map takes the left part of a lying page, the upper part of an upright one. */
function mapBox({ page, style }: BookFacts) {
  const { safe } = page;
  const top = safe.y + headHeight(style) + 2;
  const room = safe.y + safe.height - top;
  return safe.width > safe.height
    ? { x: safe.x, y: top, width: safe.width * 0.5, height: room - 16 }
    : { x: safe.x, y: top, width: safe.width, height: room * 0.44 };
}

function mapItems(facts: BookFacts, boxes: readonly PlannedBox[], scale: number): Item[] {
  const { style, plan, units } = facts;
  const window = mapBox(facts);
  const bounds = yardBounds(facts, boxes);
  const view = viewOf(scale, { x: (bounds.min.x + bounds.max.x) / 2, y: (bounds.min.y + bounds.max.y) / 2 }, window);
  const map = { things: facts.things, layers: facts.layers, boxes: plan.boxes, rounds: [], units, style };
  const numbers = boxes.map((box) => box.number);
  const under = barBase(facts);
  const right = window.x + window.width;
  return [
    drawMap(view, map, {
      own: new Set(numbers),
      look: discLook(numbers, style.number),
      lengths: false,
      alt: `Map of the yard with ${boxes.length === 1 ? 'one post' : `${boxes.length} posts`}`,
      sheetOf: null,
    }),
    scaleBar(window.x + 1, under, style.variant === 'large-print' ? 60 : 75, scale, style),
    group([text(right, under + 1, scaleLine(scale, units), style.small, { anchor: 'end' })], { tag: 'P' }),
  ];
}

function weekend(facts: BookFacts, boxes: readonly PlannedBox[], width: number): Block[] {
  const { style, plan } = facts;
  if (boxes.length === 0)
    return [
      heading('No post yet', style),
      paragraph('Draw the mown ground and the woods first, then let posts be suggested.', width, style, '', style.text),
    ];
  const say = (lead: string, words: string) => paragraph(words, width, style, lead, style.text);
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
    ? tapes.marks.map((mark, i) => `${tapeWords(tapes.metres[i]!, units)} from ${plain(mark.words)}`).join(' and ')
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
