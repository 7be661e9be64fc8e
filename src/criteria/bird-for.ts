import type { BirdGuide } from '../birds/guide.ts';
import type { SiteSettings } from '../site/types.ts';

type Node = Record<string, unknown> | readonly unknown[];

const isNode = (thing: unknown): thing is Node => typeof thing === 'object' && thing !== null;

/** A copy of `node` with the number at `path` replaced; a figure's own `value` is stepped into unasked. The same node when there is none. */
function replaced(node: unknown, path: readonly string[], value: number): unknown {
  if (isNode(node) && 'value' in node && 'unit' in node) {
    const inner = replaced(node.value, path, value);
    return inner === node.value ? node : { ...node, value: inner };
  }
  if (path.length === 0) return typeof node === 'number' ? value : node;
  const [step, ...rest] = path as [string, ...string[]];
  if (!isNode(node) || !Object.hasOwn(node, step)) return node;
  const child = (node as Record<string, unknown>)[step];
  const changed = replaced(child, rest, value);
  if (changed === child) return node;
  return Array.isArray(node) ? node.with(Number(step), changed) : { ...node, [step]: changed };
}

/** What was last made of each guide: it is asked for at every post. */
const known = new WeakMap<BirdGuide, { readonly figures: SiteSettings['figures']; readonly made: BirdGuide }>();

/**
 * A guide as a site has it: figures such as `eastern-bluebird.spacing.same` or `eastern-bluebird.habitat.woodsEdge.1.0` (the second knot's
 * metres) replace the guide's own. The same object when the site changes none; a path that leads to no number is left alone.
 */
export function birdFor(bird: BirdGuide, site: SiteSettings): BirdGuide {
  const kept = known.get(bird);
  if (kept?.figures === site.figures) return kept.made;
  const made = changedBy(bird, site);
  known.set(bird, { figures: site.figures, made });
  return made;
}

function changedBy(bird: BirdGuide, site: SiteSettings): BirdGuide {
  let changed: unknown = bird;
  for (const key in site.figures) {
    const value = site.figures[key]!;
    if (key.startsWith(`${bird.id}.`) && Number.isFinite(value)) {
      changed = replaced(changed, key.slice(bird.id.length + 1).split('.'), value);
    }
  }
  return changed as BirdGuide;
}
