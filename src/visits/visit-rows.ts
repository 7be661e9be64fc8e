/** Visits and nests as plain rows for a table file, with the dictionary of their columns. Writing CSV safely is the exchange room's job. */

import type { Span } from './days.ts';
import { exposureDays, type Nest } from './nests.ts';
import type { Visit } from './visit.ts';

export type Cell = string | number | null;

interface Column<T> {
  readonly name: string;
  readonly unit: string;
  readonly means: string;
  readonly cell: (row: T) => Cell;
}

const column = <T>(name: string, unit: string, means: string, cell: (row: T) => Cell): Column<T> => ({
  name,
  unit,
  means,
  cell,
});

const visitColumns: readonly Column<Visit>[] = [
  column('visit_id', '', 'Given once by the device; corrections name it under replaces', (visit) => visit.id),
  column('post', '', 'Id of the post in the site file', (visit) => visit.post),
  column('box', '', 'Number on the box', (visit) => visit.box),
  column('date', 'YYYY-MM-DD', 'Local date of the look', (visit) => visit.date),
  column('time', 'HH:MM', 'Local time; empty when not noted', (visit) => visit.time),
  column('zone', 'minutes', 'Local time ahead of UTC', (visit) => visit.zone),
  column('observer', '', 'Who looked', (visit) => visit.observer),
  column('state', '', 'empty, building, eggs, young, fledged, failed or other-user', (visit) => visit.state),
  column('bird', '', 'Bird id of the guides; empty when not known', (visit) => visit.bird),
  column('material', '', 'Nest material, words parted by blanks', (visit) => visit.material.join(' ')),
  column('cup', '', 'Shape of the nest', (visit) => visit.cup),
  column('eggs', 'eggs', 'Eggs counted; empty when not counted', (visit) => visit.eggs?.count ?? null),
  column('egg_color', '', 'Ground color of the eggs', (visit) => visit.eggs?.color ?? null),
  column('egg_pattern', '', 'Markings of the eggs', (visit) => visit.eggs?.pattern ?? null),
  column('egg_size', '', 'small, medium or large', (visit) => visit.eggs?.size ?? null),
  column('young', 'young', 'Live young counted; empty when not counted', (visit) => visit.young),
  column('age_least', 'days', 'Age of the young at least; hatch day is 0', (visit) => visit.age?.[0] ?? null),
  column('age_most', 'days', 'Age of the young at most', (visit) => visit.age?.[1] ?? null),
  column('dead', '', 'Dead eggs or young', (visit) => visit.dead),
  column('trouble', '', 'Trouble seen, words parted by blanks', (visit) => visit.trouble.join(' ')),
  column('action', '', 'What was done, words parted by blanks', (visit) => visit.action.join(' ')),
  column('note', '', 'Free words', (visit) => visit.note),
  column('photo', '', 'Name of a photo kept on the device', (visit) => visit.photo),
  column('made_at', 'ISO 8601', 'Instant the record was made', (visit) => visit.madeAt),
  column('replaces', '', 'Id of the visit this one corrects', (visit) => visit.replaces),
];

const dates = (name: string, what: string, span: (nest: Nest) => Span | null | undefined): Column<Nest>[] => [
  column(`${name}_earliest`, 'YYYY-MM-DD', `${what}, earliest`, (nest) => span(nest)?.earliest ?? null),
  column(`${name}_latest`, 'YYYY-MM-DD', `${what}, latest`, (nest) => span(nest)?.latest ?? null),
];

const nestColumns: readonly Column<Nest>[] = [
  column('post', '', 'Id of the post in the site file', (nest) => nest.post),
  column('box', '', 'Number on the box', (nest) => nest.box),
  column('year', '', 'Year the attempt began', (nest) => nest.year),
  column('attempt', '', "1 for the box's first attempt of the year", (nest) => nest.attempt),
  column('bird', '', 'Bird id of the guides; empty when not known', (nest) => nest.bird),
  ...dates('first_egg', 'First egg', (nest) => nest.clock?.firstEgg),
  ...dates('hatch', 'First young hatched', (nest) => nest.clock?.hatch),
  ...dates('fledge', 'Young left', (nest) => nest.clock?.fledge),
  column('eggs', 'eggs', 'Most eggs counted', (nest) => nest.eggs),
  column('young', 'young', 'Most live young counted', (nest) => nest.young),
  column(
    'fledged_least',
    'young',
    'Young that left at least; empty unless fledged',
    (nest) => nest.fledged?.[0] ?? null,
  ),
  column('fledged_most', 'young', 'Young that left at most', (nest) => nest.fledged?.[1] ?? null),
  column('outcome', '', 'fledged, failed, unfinished, unknown or no-eggs', (nest) => nest.outcome),
  column('cause', '', 'Cause of a failure as far as seen', (nest) => nest.cause),
  column('found', 'YYYY-MM-DD', 'First look with eggs or young', (nest) => nest.found),
  column('last_active', 'YYYY-MM-DD', 'Last look with eggs or young', (nest) => nest.lastActive),
  column('ended', 'YYYY-MM-DD', 'First look after the end', (nest) => nest.ended),
  column('exposure', 'days', 'Days under observation (Mayfield 1961, 1975)', (nest) => exposureDays(nest)),
  column('visits', '', 'Number of looks', (nest) => nest.visits.length),
];

function table<T>(columns: readonly Column<T>[], rows: readonly T[]): readonly (readonly Cell[])[] {
  return [columns.map((one) => one.name), ...rows.map((row) => columns.map((one) => one.cell(row)))];
}

/** Head row and one row a visit. */
export function visitRows(visits: readonly Visit[]): readonly (readonly Cell[])[] {
  return table(visitColumns, visits);
}

/** Head row and one row a nesting attempt. */
export function nestRows(nests: readonly Nest[]): readonly (readonly Cell[])[] {
  return table(nestColumns, nests);
}

/** Head row and one row a column: table, name, unit, meaning. */
export function dictionaryRows(): readonly (readonly Cell[])[] {
  const of = (name: string, columns: readonly { name: string; unit: string; means: string }[]) =>
    columns.map((one) => [name, one.name, one.unit, one.means]);
  return [['table', 'column', 'unit', 'meaning'], ...of('visits', visitColumns), ...of('nests', nestColumns)];
}
