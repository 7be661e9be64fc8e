import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/birds/guide.ts';
import { flagFigures } from '../../../src/criteria/flags.ts';
import { criteria } from '../../../src/criteria/index.ts';
import { pairingFigures } from '../../../src/criteria/pairing.ts';
import { scoreFigures } from '../../../src/criteria/score.ts';

const page = new URL('../../../docs/criteria.md', import.meta.url);
const [open, close] = ['<!-- table of figures -->\n', '<!-- end -->'];

function rowOf(id: string, name: string, { value, unit, range, source, grade, note }: Figure): string {
  const cells = [
    `\`${id}.${name}\``,
    String(Math.round(value * 1000) / 1000),
    unit,
    range ? range.join('–') : '–',
    source.join(', '),
    grade,
    note ?? '',
  ];
  return `| ${cells.join(' | ')} |`;
}

/** Every figure of every criterion, flag and pair, as the code has it. */
function figuresTable(): string {
  const owners: [string, Readonly<Record<string, Figure>>][] = [
    ...criteria.map(({ id, settings }): [string, Readonly<Record<string, Figure>>] => [id, settings]),
    ['score', scoreFigures],
    ['flags', flagFigures],
    ['pairing', pairingFigures],
  ];
  const rows = owners.flatMap(([id, figures]) =>
    Object.entries(figures).map(([name, figure]) => rowOf(id, name, figure)),
  );
  return [
    '| Figure | Default | Unit | Range | Source | Grade | Note |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
}

describe('docs/criteria.md says what the code says', () => {
  it('has one row a criterion, in display order, with its title and weight', () => {
    const rows = [...readFileSync(page, 'utf8').matchAll(/^\| `([a-z-]+)` \| ([^|]+) \| ([^|]+) \|/gm)];
    expect(rows.map(([, id, title, weight]) => [id, title, weight])).toEqual(
      criteria.map(({ id, title, weight }) => [id, title, String(weight.value)]),
    );
  });

  it('has every figure with its default, unit, range, source and grade', () => {
    const wanted = `${figuresTable()}\n`;
    const text = readFileSync(page, 'utf8');
    const [before, rest] = text.split(open) as [string, string];
    const [found, after] = rest.split(close) as [string, string];
    if (process.env.MEADOWPOST_WRITE_DOCS) writeFileSync(page, before + open + wanted + close + after);
    else
      expect(
        found,
        'MEADOWPOST_WRITE_DOCS=1 npx vitest run tests/unit/criteria/docs.test.ts writes the table anew',
      ).toBe(wanted);
  });
});
