import type { Ground } from '../ground/types.ts';
import { nameOf } from '../site/properties.ts';

/** Words for a kind in a sentence. */
const words: Readonly<Record<string, string>> = {
  'overhead-wire': 'overhead wire',
  'short-grass': 'short grass',
  'off-limits': 'off-limits ground',
};

/** What a person calls a feature: its own name, else its kind, first letter large; `otherwise` when it is not found. */
export function featureName(ground: Ground, id: string, otherwise: string): string {
  const feature = ground.site.features.find((one) => one.id === id);
  const name = feature ? (nameOf(feature)?.slice(0, 40) ?? '') : '';
  const text = name || (feature ? (words[feature.kind] ?? feature.kind) : otherwise);
  return text.charAt(0).toUpperCase() + text.slice(1);
}
