/** Say what a thing is. */
import { shapeOf } from '../site/kinds.ts';
import { kindWord, label } from '../site/label.ts';
import type { Kind, Site } from '../site/types.ts';
import { type Edit, featuresOf, namesOf, settle } from './edit.ts';

/** Gives features another kind of the same shape. */
export function setKind(site: Site, ids: readonly string[], kind: Kind): Edit {
  const features = featuresOf(site, ids);
  const wrong = features.find((feature) => shapeOf(feature.kind) !== shapeOf(kind));
  if (wrong) {
    const shape = { area: 'an area', line: 'a line', point: 'a point' };
    const word = kindWord(kind).toLowerCase();
    return {
      refused: `${label(wrong)} is ${shape[shapeOf(wrong.kind)]}; ${word} needs ${shape[shapeOf(kind)]}. Draw it anew.`,
    };
  }
  const changed = features.map((feature) => ({ ...feature, kind, properties: { ...feature.properties, kind } }));
  return settle(site, changed, `Made ${namesOf(features)} ${kindWord(kind).toLowerCase()}`);
}
