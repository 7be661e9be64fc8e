/** What can be done to the chosen thing: each tool with the reason why not, so that a button can say it. */
import { bufferLine } from '../../edits/buffer-line.ts';
import { chainsOf } from '../../edits/chains.ts';
import { cutOut } from '../../edits/cut-hole.ts';
import { deleteFeatures } from '../../edits/delete-features.ts';
import { deleteVertex } from '../../edits/delete-vertex.ts';
import { fillHole } from '../../edits/fill-hole.ts';
import { mergeAreas } from '../../edits/merge-areas.ts';
import { simplify } from '../../edits/simplify.ts';
import { squareBuilding } from '../../edits/square-building.ts';
import { shapeOf } from '../../site/kinds.ts';
import type { AreaKind, Site, SiteFeature } from '../../site/types.ts';
import type { Store } from '../store.ts';
import type { Words } from '../words/en.ts';
import { takeTool } from './land-draw.ts';
import { change, choose, chooseCorner, chosenId, setLand } from './land-state.ts';

export type ToolName =
  | 'reshape'
  | 'split'
  | 'merge'
  | 'hole'
  | 'cut-out'
  | 'fill-hole'
  | 'simplify'
  | 'square'
  | 'buffer';

/** A tool in the card: `why` says why it cannot be used; null = it can. */
export interface ToolRow {
  readonly name: ToolName;
  readonly why: string | null;
}

/** Every tool that fits the shape of the thing, in the order of the card. A point has none. */
export function toolsFor(site: Site, feature: SiteFeature, chain: number | null, words: Words): ToolRow[] {
  const { whyNot } = words.land;
  const kind = shapeOf(feature.kind);
  const unplaced = feature.geometry === null ? whyNot.unplaced : null;
  if (kind === 'point') return [];
  if (kind === 'line')
    return [row('reshape', unplaced), row('simplify', unplaced ?? tooFew(feature, words)), row('buffer', unplaced)];
  const others = site.features.some((f) => f !== feature && shapeOf(f.kind) === 'area' && f.geometry);
  const alone = unplaced ?? (others ? null : whyNot.onlyArea);
  return [
    row('reshape', unplaced),
    row('split', unplaced),
    row('merge', alone),
    row('hole', unplaced),
    row('cut-out', alone),
    row('fill-hole', unplaced ?? holeReason(feature, chain, words)),
    row('simplify', unplaced ?? tooFew(feature, words)),
    row('square', unplaced ?? (feature.kind === 'building' ? null : whyNot.notBuilding)),
  ];
}

function row(name: ToolName, why: string | null): ToolRow {
  return { name, why };
}

function tooFew({ geometry }: SiteFeature, words: Words): string | null {
  const chains = chainsOf(geometry);
  const spare = chains.some(({ corners, closed }) => corners.length > (closed ? 3 : 2));
  return spare ? null : words.land.whyNot.fewCorners;
}

function holeReason({ geometry }: SiteFeature, chain: number | null, words: Words): string | null {
  const { whyNot } = words.land;
  const parts =
    geometry?.type === 'Polygon'
      ? [geometry.coordinates]
      : geometry?.type === 'MultiPolygon'
        ? geometry.coordinates
        : [];
  const holes = parts.flatMap((part) => part.map((_ring, i) => i > 0));
  if (!holes.includes(true)) return whyNot.noHole;
  return chain !== null && holes[chain] ? null : whyNot.chooseHole;
}

/** Starts or does a tool on the chosen thing. `amount` in metres: the simplifying distance, the strip's width. */
export function runTool(store: Store, name: ToolName, amount = 1, kind: AreaKind = 'brush'): void {
  const { site, land } = store.state;
  const id = chosenId(store);
  if (!site || !id) return;
  const { shared } = land;
  if (name === 'reshape' || name === 'split' || name === 'hole' || name === 'merge' || name === 'cut-out') {
    takeTool(store, { does: name, id });
    return;
  }
  if (name === 'simplify') change(store, simplify(site, id, amount, { shared }));
  if (name === 'square') change(store, squareBuilding(site, id));
  if (name === 'fill-hole' && land.corner) {
    if (change(store, fillHole(site, id, land.corner.chain))) chooseCorner(store, null);
  }
  if (name === 'buffer' && change(store, bufferLine(site, id, { kind, width: amount })))
    choose(store, store.state.site?.features.at(-1)?.id ?? null);
}

/** The second area of merging or cutting out, pressed on the map or chosen in the list. */
export function pickOther(store: Store, other: string | null): void {
  const { site, land, words } = store.state;
  const { tool } = land;
  if (!site || (tool?.does !== 'merge' && tool?.does !== 'cut-out')) return;
  if (other === null || other === tool.id) {
    setLand(store, { trouble: { sentence: words.land.pickOther, at: null } });
    return;
  }
  const answer = tool.does === 'merge' ? mergeAreas(site, [tool.id, other]) : cutOut(site, tool.id, other);
  if (change(store, answer)) setLand(store, { tool: null });
}

/** Deletes the chosen corner; the one before it is chosen then. */
export function deleteCorner(store: Store): void {
  const { site, land } = store.state;
  const id = chosenId(store);
  if (!site || !id || !land.corner) return;
  const { chain, corner } = land.corner;
  if (change(store, deleteVertex(site, id, land.corner, { shared: land.shared })))
    chooseCorner(store, { chain, corner: Math.max(0, corner - 1) });
}

/** Deletes the chosen thing. */
export function deleteChosen(store: Store): void {
  const { site } = store.state;
  const id = chosenId(store);
  if (site && id && change(store, deleteFeatures(site, [id]))) choose(store, null);
}
