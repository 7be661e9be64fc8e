/** The kinds as the chooser shows them: ground, edges, things, each with the rows of the key that picture them. */
import { subjects } from '../../../../layers/all.ts';
import type { LegendRow, Subject } from '../../../../layers/types.ts';
import { areaKinds, type Kind, lineKinds, pointKinds } from '../../../site/types.ts';

export type Group = 'ground' | 'edges' | 'things';

/** What is drawn first stands first: mown ground decides most of the score. */
const first: readonly Kind[] = ['short-grass', 'meadow', 'woods', 'brush', 'building'];

export const kindGroups: Readonly<Record<Group, readonly Kind[]>> = {
  ground: [...first, ...areaKinds.filter((kind) => !first.includes(kind))],
  edges: lineKinds,
  things: ['post', ...pointKinds.filter((kind) => kind !== 'post')],
};

/** Subject and key row that picture a kind. */
export function pictureOf(kind: Kind): { subject: Subject; row: LegendRow } | null {
  const subject = subjects.find((one) => one.kinds.includes(kind) && one.legend.length > 0);
  const row = subject?.legend.find(({ word }) => word === kind) ?? subject?.legend[0];
  return subject && row ? { subject, row } : null;
}
