/** What a word for a kind means, and which shape a kind has. */
import { type AreaKind, areaKinds, type Kind, type LineKind, lineKinds, type PointKind, pointKinds } from './types.ts';

/** How a kind is drawn. */
export type Shape = 'area' | 'line' | 'point';

/** All kinds, areas first. */
export const allKinds: readonly Kind[] = [...areaKinds, ...lineKinds, ...pointKinds];

/** Which shape a kind is drawn with. */
export function shapeOf(kind: Kind): Shape {
  if (areaKinds.includes(kind as AreaKind)) return 'area';
  return lineKinds.includes(kind as LineKind) ? 'line' : 'point';
}

/** Whether a word is a kind, spelled right. */
export function isKind(word: unknown): word is Kind {
  return (
    areaKinds.includes(word as AreaKind) ||
    lineKinds.includes(word as LineKind) ||
    pointKinds.includes(word as PointKind)
  );
}

/** "Short Grass" and "short_grass" → `short-grass`; null when it is none of ours. */
export function respelled(word: string): Kind | null {
  const plain = word
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-');
  return isKind(plain) ? plain : null;
}

/** Everyday words for our kinds. Only suggested, never taken for granted. */
const everyday: Readonly<Record<string, Kind>> = {
  forest: 'woods',
  wood: 'woods',
  woodland: 'woods',
  trees: 'woods',
  lawn: 'short-grass',
  grass: 'short-grass',
  pasture: 'short-grass',
  mown: 'short-grass',
  field: 'crop',
  farmland: 'crop',
  hay: 'meadow',
  'tall-grass': 'meadow',
  prairie: 'meadow',
  scrub: 'brush',
  shrubs: 'brush',
  thicket: 'brush',
  bush: 'shrub',
  pond: 'water',
  lake: 'water',
  river: 'stream',
  creek: 'stream',
  marsh: 'wetland',
  swamp: 'wetland',
  house: 'building',
  barn: 'building',
  shed: 'building',
  parking: 'paved',
  pavement: 'paved',
  street: 'road',
  trail: 'path',
  footpath: 'path',
  powerline: 'overhead-wire',
  wire: 'overhead-wire',
  box: 'post',
  nestbox: 'post',
  'nest-box': 'post',
  birdhouse: 'post',
  start: 'trailhead',
};

/** The kind a word most likely means: by everyday words, else the one fewest letters away. */
export function nearestKind(word: string): Kind {
  const plain = word.slice(0, 40).trim().toLowerCase();
  const dashed = plain.replace(/[\s_]+/g, '-');
  if (Object.hasOwn(everyday, dashed)) return everyday[dashed]!;
  const scored = allKinds.map((kind) => ({ kind, away: lettersApart(plain, kind) }));
  return scored.reduce((best, one) => (one.away < best.away ? one : best)).kind;
}

/** Letters to add, drop or change to make one word the other (Levenshtein 1966). */
function lettersApart(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(change, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
