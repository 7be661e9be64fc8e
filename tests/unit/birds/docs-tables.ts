/** The tables of docs/sources.md and docs/birds.md as the code has them. MEADOWPOST_WRITE_DOCS=1 writes them into the pages. */
import { readFileSync, writeFileSync } from 'node:fs';
import type { BirdGuide, Curve, Figure } from '../../../src/birds/guide.ts';
import { holeText } from '../../../src/birds/hole.ts';
import { birdGuides } from '../../../src/birds/index.ts';
import { sources } from '../../../src/birds/sources.ts';

const cell = (text: string) => text.replaceAll('|', '\\|');
const row = (cells: readonly string[]) => `| ${cells.map(cell).join(' | ')} |`;
const table = (head: readonly string[], rows: readonly (readonly string[])[]) =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');

export function sourcesTable(): string {
  return table(
    ['Key', 'Title', 'Publisher', 'Year', 'Grade', 'Seen'],
    sources.map((source) => [
      `\`${source.key}\``,
      source.title,
      source.publisher,
      source.year ?? '–',
      source.grade,
      source.seen,
    ]),
  );
}

const short = (number: number) => String(Math.round(number * 100) / 100);
const figureText = (figure: Figure<unknown>, text: string) => `${text} [${figure.grade}]`;
const curveText = (figure: Figure<Curve> | null, scale = 1) =>
  figure === null
    ? '–'
    : figureText(figure, figure.value.map(([raw, score]) => `${short(raw * scale)}: ${short(score)}`).join(', '));

function boxRow(bird: BirdGuide): string[] {
  const { hole, mount } = bird.box;
  const same = bird.spacing.same;
  return [
    bird.pest ? `${bird.name} (pest)` : bird.name,
    `\`${bird.id}\``,
    bird.regions.join(', '),
    figureText(hole, `${holeText(hole, 'us')} / ${holeText(hole, 'metric')}`),
    figureText(mount, mount.value.map(short).join('–')),
    figureText(same, short(same.value)),
    bird.spacing.pairs ? 'yes' : 'no',
  ];
}

function curveRow(bird: BirdGuide): string[] {
  const { habitat } = bird;
  return [
    bird.name,
    curveText(habitat.lowCoverShare, 100),
    curveText(habitat.sight),
    curveText(habitat.woodsEdge) +
      (habitat.woodsEdgeHard ? `; refused nearer than ${short(habitat.woodsEdgeHard.value)}` : ''),
    curveText(habitat.brush),
    curveText(habitat.building),
    curveText(habitat.feeder),
    curveText(habitat.water),
  ];
}

export function boxTable(): string {
  const head = ['Bird', 'Id', 'Regions', 'Hole', 'Mount, m', 'Spacing, m', 'Pairs'];
  return table(head, birdGuides.map(boxRow));
}

export function curvesTable(): string {
  const head = [
    'Bird',
    'Low cover, %',
    'Free sight, m',
    'Woods edge, m',
    'Brush, m',
    'Building, m',
    'Feeder, m',
    'Water, m',
  ];
  return table(head, birdGuides.filter((bird) => !bird.pest).map(curveRow));
}

/** What stands between `<!-- name -->` and `<!-- end of name -->`; first rewritten when asked for. */
export function fenced(page: string, name: string, wanted: string): string {
  const file = new URL(`../../../docs/${page}`, import.meta.url);
  const text = readFileSync(file, 'utf8');
  const [open, close] = [`<!-- ${name} -->\n`, `\n<!-- end of ${name} -->`];
  const [start, end] = [text.indexOf(open), text.indexOf(close)];
  if (start < 0 || end < start) throw new Error(`docs/${page} has no place for ${name}`);
  if (process.env.MEADOWPOST_WRITE_DOCS === '1') {
    writeFileSync(file, text.slice(0, start) + open + wanted + text.slice(end));
    return wanted;
  }
  return text.slice(start + open.length, end);
}
