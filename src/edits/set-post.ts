/** Set what is known of a post. */
import { label } from '../site/label.ts';
import { postPair } from '../site/properties.ts';
import type { PostState, Site, SiteFeature } from '../site/types.ts';
import { type Edit, featureOf, withFeatures } from './edit.ts';
import { refusal, withProperty } from './set-property.ts';

/** What is left out stays; null takes it away. */
export interface PostChange {
  readonly state?: PostState;
  /** Whether every plan keeps the candidate where it is. */
  readonly locked?: boolean | null;
  readonly bird?: string | null;
  /** Degrees clockwise from true north. */
  readonly facing?: number | null;
  /** Metres from ground to hole. */
  readonly holeHeight?: number | null;
  readonly number?: number | null;
  /** Id of the post it is one site with: both then name each other. */
  readonly pair?: string | null;
}

/** Sets some of a post's properties. A new pair ends the old ones of both posts. */
export function setPost(site: Site, id: string, change: PostChange): Edit {
  const post = featureOf(site, id);
  if (post.kind !== 'post') throw new Error(`not a post: ${id}`);
  const entries = Object.entries(change).filter(([, value]) => value !== undefined);
  const refused = entries.map(([name, value]) => refusal(post, name, value)).find((reason) => reason !== null);
  if (refused) return { refused };
  const { pair } = change;
  const badPair = typeof pair === 'string' ? pairRefusal(site, post, pair) : null;
  if (badPair) return { refused: badPair };
  const set = entries.reduce((one, [name, value]) => withProperty(one, name, value ?? undefined), post);
  const features = site.features.map((feature) => (feature === post ? set : feature));
  const paired = pair === undefined ? features : features.map((feature) => repaired(feature, id, pair));
  const what = entries.length === 1 ? ` (${entries[0]![0] === 'holeHeight' ? 'hole height' : entries[0]![0]})` : '';
  return { site: withFeatures(site, paired), sentence: `Changed ${label(post)}${what}` };
}

function pairRefusal(site: Site, post: SiteFeature, pair: string): string | null {
  if (pair === post.id) return `${label(post)} cannot be paired with itself. Choose another post.`;
  const other = site.features.find((feature) => feature.id === pair);
  return other?.kind === 'post'
    ? null
    : `There is no post “${pair.slice(0, 60)}” to pair ${label(post)} with. Choose a post.`;
}

/** Makes the other side of a pair agree: the new partner names `id`, whoever else named one of the two no longer does. */
function repaired(feature: SiteFeature, id: string, pair: string | null): SiteFeature {
  if (feature.kind !== 'post' || feature.id === id) return feature;
  if (feature.id === pair) return withProperty(feature, 'pair', id);
  const named = postPair(feature);
  return named !== null && (named === id || named === pair) ? withProperty(feature, 'pair', undefined) : feature;
}
