import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { sources } from '../../../src/birds/sources.ts';
import { boxTable, curvesTable, fenced, sourcesTable } from './docs-tables.ts';

const hint =
  'docs and code disagree: MEADOWPOST_WRITE_DOCS=1 npx vitest run tests/unit/birds/docs.test.ts writes the tables anew';

describe('docs say what the code says', () => {
  test.each([
    ['sources.md', 'table of sources', sourcesTable],
    ['birds.md', 'table of boxes', boxTable],
    ['birds.md', 'table of curves', curvesTable],
  ] as const)('%s: %s', (page, name, make) => {
    const wanted = make();
    expect(fenced(page, name, wanted), hint).toBe(wanted);
  });

  test('every source key written anywhere in src is a known one', () => {
    const known = new Set(sources.map((source) => source.key));
    const root = new URL('../../../src/', import.meta.url);
    const unknown: string[] = [];
    let seen = 0;
    for (const file of readdirSync(root, { recursive: true, encoding: 'utf8' })) {
      if (!file.endsWith('.ts')) continue;
      const text = readFileSync(new URL(file.replaceAll('\\', '/'), root), 'utf8');
      for (const list of text.matchAll(/\bsources?: \[([^\]]*)\]/g)) {
        for (const [, quote, key] of list[1]!.matchAll(/(['"])((?:(?!\1).)*)\1/g)) {
          seen++;
          if (quote && !known.has(key!)) unknown.push(`${file}: ${key}`);
        }
      }
    }
    expect(seen).toBeGreaterThan(20);
    expect(unknown).toEqual([]);
  });
});
