/** A whole map page: head, map, edges, bars, north, notes and key. Index and detail sheets differ only in what they put on it. */
import { calibration, calibrationLine, scaleBar, scaleLine } from './bars.ts';
import { group, type Item, text } from './display.ts';
import { drawEdge } from './edge.ts';
import type { BookFacts } from './facts.ts';
import { edgeTicks, type GridZone, gridZone } from './grid.ts';
import { drawHeader } from './header.ts';
import { mapLayout } from './layout.ts';
import { drawKeys, type KeyRow } from './legend.ts';
import { drawMap, type MapWish } from './map.ts';
import { plain, widthOf, wrap } from './measure.ts';
import { northArrow } from './north.ts';
import { ratioWords, scaleWords } from './scale-words.ts';
import { point, type Style } from './style.ts';
import type { View } from './view.ts';

export interface MapPage {
  readonly view: View;
  readonly what: string;
  readonly below: string;
  readonly wish: MapWish;
  readonly boxRows: readonly KeyRow[];
  readonly landRows: readonly KeyRow[];
  readonly notes: readonly string[];
  readonly sheet: number;
  readonly sheets: number;
}

/** All items of the page. */
export function mapPageItems(facts: BookFacts, page: MapPage): Item[] {
  const { style, plan, stamp, units, frame } = facts;
  const layout = mapLayout(facts.page, style);
  const { view } = page;
  const zone = gridZone(frame.toLonLat(view.centre));
  const widest = widthOf('00°00.000′ W', style.small);
  const header = drawHeader(
    layout.head,
    { siteName: plan.siteName, what: page.what, below: page.below, sheet: page.sheet, sheets: page.sheets, ...stamp },
    style,
  );
  const map = { things: facts.things, layers: facts.layers, boxes: plan.boxes, rounds: plan.rounds, units, style };
  return [
    ...header.items,
    drawMap(view, map, page.wish),
    ...drawEdge(view, edgeTicks(view, frame, zone, widest * 1.35), style),
    ...bars(facts, view),
    ...(style.variant === 'large-print' ? largePanel : panel)(facts, page, gridWords(zone, style)),
  ];
}

function gridWords(zone: GridZone | null, { variant }: Style): string[] {
  if (!zone) return ['WGS 84.'];
  return variant === 'large-print'
    ? [`UTM ${zone.zone} ${zone.square}, WGS 84.`]
    : [`UTM zone ${zone.zone} left and bottom, square ${zone.square} (USNG); WGS 84.`];
}

function bars({ page, style }: BookFacts, view: View): Item[] {
  const { strip } = mapLayout(page, style);
  const top = strip.y + style.small * point * 0.8 + 2.6;
  const x = strip.x + strip.width - calibration.inches - widthOf('4 in', style.small) - 2;
  const gap = style.variant === 'large-print' ? 22 : 16;
  return [scaleBar(strip.x + 1, top, x - strip.x - gap, view.scale, style), calibrationLine(x, top - 0.4, style)];
}

/** North above, then notes, then the key; side by side when the panel is wide. */
function panel({ style, page, stamp, units }: BookFacts, map: MapPage, grid: readonly string[]): Item[] {
  const box = mapLayout(page, style).panel;
  const wide = box.width > 1.6 * box.height;
  const left = wide ? Math.min(box.width * 0.4, 76) : box.width;
  const scale = text(box.x, box.y + style.head * point * 0.8, scaleLine(map.view.scale, units), style.head, {
    face: 'serifBold',
  });
  const y = box.y + style.head * point + 2;
  const north = northArrow(box.x, y, left, stamp.declination, style);
  const credit = stamp.credit ? [plain(stamp.credit)] : [];
  const rows = [...credit, ...map.notes, ...grid].flatMap((words) => wrap(words, left, style.small));
  const notesTop = y + north.height + style.small * point * 0.75;
  const room = Math.max(0, Math.floor((box.y + box.height - notesTop + style.smallLine * 0.9) / style.smallLine));
  const notes = rows.slice(0, room).map((row, i) => text(box.x, notesTop + i * style.smallLine, row, style.small));
  const keyTop = wide ? box.y + 1 : notesTop + rows.length * style.smallLine;
  const keyLeft = wide ? box.x + left + 5 : box.x;
  const keyWidth = wide ? box.width - left - 5 : box.width;
  const bottom = box.y + box.height;
  const keyBox = { x: keyLeft, y: keyTop, width: keyWidth, height: bottom - keyTop };
  const keys = drawKeys([map.boxRows, map.landRows], keyBox, style);
  return [group([scale], { tag: 'P' }), north.item, group(notes, { tag: 'P' }), ...keys];
}

/** Large letters: scale, north and notes alone, so that the map keeps its room; the key has a page of its own. */
function largePanel({ style, page, stamp, units }: BookFacts, map: MapPage, grid: readonly string[]): Item[] {
  const box = mapLayout(page, style).panel;
  const wide = box.width > box.height;
  const left = wide ? 70 : box.width;
  const step = style.head * point * 1.15;
  const scale = [ratioWords(map.view.scale), scaleWords(map.view.scale, units)].map((words, i) =>
    text(box.x, box.y + style.head * point * 0.8 + i * step, words, style.head, { face: 'serifBold' }),
  );
  const north = northArrow(box.x, box.y + 2 * step + 1, left, stamp.declination, style);
  const notesLeft = wide ? box.x + left + 5 : box.x;
  const notesTop = (wide ? box.y : box.y + 2 * step + 1 + north.height) + style.small * point * 0.75;
  const width = box.x + box.width - notesLeft;
  const credit = stamp.credit ? [plain(stamp.credit)] : [];
  const rows = [...credit, ...map.notes, ...grid].flatMap((words) => wrap(words, width, style.small));
  const room = Math.max(0, Math.floor((box.y + box.height - notesTop) / style.smallLine) + 1);
  const notes = rows.slice(0, room).map((row, i) => text(notesLeft, notesTop + i * style.smallLine, row, style.small));
  return [group(scale, { tag: 'P' }), north.item, group(notes, { tag: 'P' })];
}
