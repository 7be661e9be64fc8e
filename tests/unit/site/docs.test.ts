import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defaultHeights, defaultSettings } from '../../../src/site/defaults.ts';
import { issueKinds } from '../../../src/site/issues.ts';
import { allKinds } from '../../../src/site/kinds.ts';
import { propertyRows } from '../../../src/site/property-table.ts';
import { readSite } from '../../../src/site/read.ts';
import { settingTable } from '../../../src/site/setting-table.ts';
import { coverKinds } from '../../../src/site/types.ts';

const doc = readFileSync(new URL('../../../docs/file-format.md', import.meta.url), 'utf8');

/** Rows of all tables as lists of cells, by their first cell without its quotes. */
const rows = new Map(
  doc
    .split('\n')
    .filter((line) => line.startsWith('| `'))
    .map((line) =>
      line
        .slice(1, -1)
        .split('|')
        .map((cell) => cell.trim()),
    )
    .map((cells): [string, string[]] => [cells[0]!.replaceAll('`', ''), cells]),
);

describe('docs/file-format.md', () => {
  it('has an example that opens without a word', () => {
    const example = /```json\n([\s\S]*?)```/.exec(doc)?.[1] ?? '';
    const { site, issues } = readSite(example, 'example.geojson');
    expect(issues).toEqual([]);
    expect(site?.features).toHaveLength(5);
  });

  it('lists exactly the issues of the code, with severity and meaning', () => {
    const severities = ['error', 'repaired', 'warning', 'note'];
    const listed = [...rows]
      .filter(([, cells]) => severities.includes(cells[1]!))
      .map(([id, cells]) => [id, cells[1], cells[2]]);
    expect(listed).toEqual(Object.entries(issueKinds).map(([id, { severity, means }]) => [id, severity, means]));
  });

  it('lists the properties and settings of the code with range and meaning', () => {
    for (const [name, row] of Object.entries({ ...settingTable, ...propertyRows })) {
      if (name === 'name') continue;
      expect(rows.get(name)?.at(-1), name).toBe(row.means);
      if (row.range) expect(rows.get(name)?.join(' '), name).toContain(`${row.range[0]} to ${row.range[1]}`);
      for (const word of row.words ?? []) expect(rows.get(name)?.join(' '), name).toContain(word);
    }
  });

  it('gives the defaults and kinds of the code', () => {
    for (const [name, value] of Object.entries(defaultSettings)) {
      if (typeof value === 'string' && name !== 'name') expect(rows.get(name)?.[3], name).toBe(value);
      if (typeof value === 'number') expect(rows.get(name)?.[3], name).toBe(String(value));
    }
    for (const [kind, { value }] of Object.entries(defaultHeights)) expect(doc).toContain(`${kind} ${value}`);
    for (const kind of allKinds) expect(doc).toContain(`\`${kind}\``);
    expect(doc).toContain(coverKinds.join(' > '));
  });
});
