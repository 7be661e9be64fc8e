/** A site made ready to measure: built once, then only read (it keeps room to work in, so one ground serves one caller at a time). */
import type { Point } from '../geometry/point.ts';
import type { CoverKind, Site } from '../site/types.ts';
import { makeCover } from './cover.ts';
import { type Drawn, type DrawnArea, drawnOn } from './drawn.ts';
import { makeFrame, middleOf } from './frame.ts';
import { type Layer, makeLayer } from './layer.ts';
import { makeTargetIndex, type TargetIndex } from './nearest.ts';
import { makeSight } from './sight.ts';
import { belongsTo, targetPieces } from './target-pieces.ts';
import { targetRows } from './targets.ts';
import type { Ground, Target } from './types.ts';

const placeWords: Partial<Record<CoverKind, string>> = {
  water: 'in water',
  building: 'on a roof',
  paved: 'on paved ground',
};

const withName = (words: string, { name }: DrawnArea): string => (name === null ? words : `${words} (${name})`);

interface Layers {
  readonly cover: Layer;
  readonly offLimits: Layer;
  readonly boundary: Layer;
}

/** Why no box may stand at a point. */
function forbiddenAt(layers: Layers, top: number, p: Point): ReturnType<Ground['forbidden']> {
  const area = layers.cover.areas[top];
  const words = area && placeWords[area.kind as CoverKind];
  if (words) return { reason: withName(words, area), feature: area.id };
  const off = layers.offLimits.areas[layers.offLimits.topAt(p.x, p.y)];
  if (off) return { reason: withName('in off-limits ground', off), feature: off.id };
  const { areas } = layers.boundary;
  const bounded = areas.some(({ parts }) => parts.length > 0);
  if (!bounded || layers.boundary.topAt(p.x, p.y) >= 0) return null;
  return { reason: 'outside the boundary', feature: areas.length === 1 ? areas[0]!.id : null };
}

interface TargetSearch {
  readonly index: TargetIndex;
  inside(p: Point): boolean;
}

/** Makes the search of a target when it is first asked for. */
function makeSearches(layers: Layers, drawn: Drawn, topAt: (p: Point) => number): (target: Target) => TargetSearch {
  const made = new Map<Target, TargetSearch>();
  const make = (target: Target): TargetSearch => {
    const row = targetRows[target];
    if (!row) throw new RangeError(`unknown target: ${target}`);
    const rule = target === 'off-limits';
    const layer = rule ? layers.offLimits : layers.cover;
    const belongs = belongsTo(row, layer);
    const inside = (p: Point): boolean => belongs[rule ? layer.topAt(p.x, p.y) : topAt(p)] === true;
    return { index: makeTargetIndex(targetPieces(row, layer, drawn)), inside };
  };
  return (target) => {
    let search = made.get(target);
    if (!search) {
      search = make(target);
      made.set(target, search);
    }
    return search;
  };
}

/** Prepares a site. Never throws on what a person drew: what cannot be measured takes no part (`readSite` says what is wrong). */
export function prepareGround(site: Site): Ground {
  const frame = makeFrame(middleOf(site.features));
  const drawn = drawnOn(site, frame);
  const layers: Layers = {
    cover: makeLayer(drawn.cover),
    offLimits: makeLayer(drawn.offLimits),
    boundary: makeLayer(drawn.boundary),
  };
  const last = { x: Number.NaN, y: Number.NaN, top: -1 };
  const topAt = ({ x, y }: Point): number => {
    if (x === last.x && y === last.y) return last.top;
    last.x = x;
    last.y = y;
    last.top = layers.cover.topAt(x, y);
    return last.top;
  };
  const searchOf = makeSearches(layers, drawn, topAt);
  const cover = makeCover(layers.cover);
  return {
    site,
    frame,
    bounds: drawn.bounds,
    landBounds: drawn.landBounds,
    has: (target) => !searchOf(target).index.empty,
    coverAt: (p) => (layers.cover.areas[topAt(p)]?.kind as CoverKind | undefined) ?? null,
    shares: (p, radius) => cover.shares(p.x, p.y, radius),
    nearest(p, target, reach = Infinity) {
      const { index, inside } = searchOf(target);
      return index.empty ? null : index.nearest(p, inside(p), reach);
    },
    piecesWithin: (p, target, reach) => searchOf(target).index.within(p, reach),
    ...makeSight(layers.cover, drawn, topAt),
    forbidden: (p) => forbiddenAt(layers, topAt(p), p),
  };
}
