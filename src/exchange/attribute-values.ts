/** What words a file uses for its things, so that a person can say what each means. */
import type { Shape } from '../site/kinds.ts';
import { geometryShape } from './fit-shape.ts';
import type { ImportFormat, ReadFeature } from './import-types.ts';
import { attributeText } from './mapping.ts';

export interface AttributeValue {
  readonly value: string;
  readonly count: number;
  readonly shapes: readonly Shape[];
}

/** One attribute of the file; `values` most frequent first, at most `mostValues`; `different` counts all. */
export interface AttributeSummary {
  readonly attribute: string;
  readonly count: number;
  readonly different: number;
  readonly values: readonly AttributeValue[];
}

/** Values listed for one attribute. Names and ids have hundreds, which nobody maps one by one. */
export const mostValues = 50;

/** Every attribute with its values and how often each comes; attributes with few different values (classes) first. */
export function attributeValues(features: readonly ReadFeature[]): readonly AttributeSummary[] {
  const table = new Map<string, Map<string, { count: number; shapes: Set<Shape> }>>();
  for (const feature of features) {
    for (const [attribute, value] of Object.entries(feature.attributes)) {
      const text = attributeText(value);
      if (text !== '') tally(table, attribute, text, geometryShape(feature.geometry));
    }
  }
  return [...table].map(([attribute, values]) => summary(attribute, values)).sort(byUse);
}

/** Under which key a mapping is remembered: the format and the attribute names a source always has. */
export function sourceKey(format: ImportFormat, attributes: readonly AttributeSummary[]): string {
  return `${format}: ${attributes
    .map((one) => one.attribute)
    .sort()
    .slice(0, 40)
    .join(', ')}`;
}

function tally(
  table: Map<string, Map<string, { count: number; shapes: Set<Shape> }>>,
  attribute: string,
  text: string,
  shape: Shape,
): void {
  const values = table.get(attribute) ?? new Map<string, { count: number; shapes: Set<Shape> }>();
  table.set(attribute, values);
  const entry = values.get(text) ?? { count: 0, shapes: new Set<Shape>() };
  values.set(text, entry);
  entry.count++;
  entry.shapes.add(shape);
}

function summary(
  attribute: string,
  values: ReadonlyMap<string, { count: number; shapes: Set<Shape> }>,
): AttributeSummary {
  const all = [...values].map(([value, { count, shapes }]) => ({ value, count, shapes: [...shapes] }));
  all.sort((a, b) => b.count - a.count || (a.value < b.value ? -1 : 1));
  return {
    attribute,
    count: all.reduce((sum, one) => sum + one.count, 0),
    different: all.length,
    values: all.slice(0, mostValues),
  };
}

/** Classes repeat: things per different value, most first. */
function byUse(a: AttributeSummary, b: AttributeSummary): number {
  return b.count / b.different - a.count / a.different || (a.attribute < b.attribute ? -1 : 1);
}
