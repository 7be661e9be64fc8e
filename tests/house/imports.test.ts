/** The house rules of DEVELOPERS.md, kept by a test: rooms import one way, foreign packages stay behind their doors, the engine touches no machine. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const src = resolve('src');
const files = walk(src);

/** A room imports only from rooms of lower rank (and itself); `only` narrows that further. */
const rooms: Record<string, { rank: number; only?: string[] }> = {
  geometry: { rank: 0 },
  sky: { rank: 0 },
  site: { rank: 1, only: ['geometry'] },
  birds: { rank: 1, only: [] },
  edits: { rank: 2 },
  visits: { rank: 2 },
  ground: { rank: 2 },
  criteria: { rank: 3 },
  'plan-types': { rank: 3.5 },
  placement: { rank: 4 },
  route: { rank: 4, only: ['geometry', 'sky', 'site', 'birds', 'edits', 'visits', 'ground', 'plan-types'] },
  plan: { rank: 5 },
  print: { rank: 6, only: ['geometry', 'sky', 'site', 'birds', 'edits', 'visits', 'ground', 'plan-types'] },
  exchange: { rank: 6, only: ['geometry', 'sky', 'site', 'birds', 'edits', 'visits', 'ground', 'plan-types'] },
  app: { rank: 7 },
  cli: { rank: 7 },
};

/** Foreign packages and the places that may import them. */
const doors: [RegExp, RegExp][] = [
  [/^maplibre-gl/, /^app\/map\//],
  [/^terra-draw/, /^app\/map\//],
  [/^lit|^@lit\//, /^app\//],
  [/^suncalc$/, /^sky\//],
  [/^geomagnetism$/, /^sky\//],
  [/^geojson-validation$/, /^site\//],
  [/^highs/, /^(placement\/solver|app\/engine\/|cli\/)/],
  [/^pdfkit/, /^print\//],
  [/^idb$/, /^app\/storage\//],
  [/^node:/, /^cli\//],
];

describe('the house', () => {
  it('has a known room for every file', () => {
    const strangers = files.filter((f) => !rooms[roomOf(f)]);
    expect(strangers, 'give the file a room, or the room a rank in this test and in DEVELOPERS.md').toEqual([]);
  });

  it('imports one way', () => {
    const wrong = files.flatMap((file) =>
      importsOf(file).flatMap((target) => {
        if (!target.startsWith('.')) return [];
        const there = relative(src, resolve(dirname(join(src, file)), target));
        if (there.startsWith('..')) return [];
        const [from, to] = [roomOf(file), roomOf(there)];
        if (from === to || !rooms[from] || !rooms[to]) return [];
        const allowed = rooms[to].rank < rooms[from].rank && (rooms[from].only?.includes(to) ?? true);
        return allowed ? [] : [`${file} (rank ${rooms[from].rank}) imports ${there} (rank ${rooms[to].rank})`];
      }),
    );
    expect(wrong, 'move the shared piece down, or pass it in as an argument').toEqual([]);
  });

  it('keeps foreign packages behind their doors', () => {
    const wrong = files.flatMap((file) =>
      importsOf(file)
        .filter((target) => doors.some(([name, place]) => name.test(target) && !place.test(file)))
        .map((target) => `${file} imports ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  it('has no page, clock or network below the app', () => {
    const machine =
      /\b(document\.(create|query|get|body|head|add)|window\.(document|location|add|inner|open|print|set|local)|localStorage|navigator\.|fetch\(|Date\.now\(|new Date\(\)|performance\.now\(|Math\.random\(|process\.)/;
    const wrong = files
      .filter((file) => rooms[roomOf(file)]?.rank < 7)
      .flatMap((file) =>
        code(file)
          .split('\n')
          .map((line, n) => ({ line, n: n + 1 }))
          .filter(({ line }) => machine.test(line))
          .map(({ line, n }) => `${file}:${n} ${line.trim()}`),
      );
    expect(wrong, 'pass the date, the seed or the loader in').toEqual([]);
  });

  it('has no import cycle', () => {
    const graph = new Map(
      files.map((file) => [
        file,
        runtimeImportsOf(file)
          .filter((t) => t.startsWith('.'))
          .map((t) => relative(src, resolve(dirname(join(src, file)), t))),
      ]),
    );
    expect(cycle(graph)).toBeNull();
  });
});

function walk(dir: string): string[] {
  return readdirSync(dir).flatMap((name) => {
    const path = join(dir, name);
    if (statSync(path).isDirectory()) return walk(path);
    return /\.ts$/.test(name) && !/\.d\.ts$/.test(name) ? [relative(src, path)] : [];
  });
}

function roomOf(file: string): string {
  return file.includes('/') ? file.split('/')[0] : file.replace(/\.ts$/, '');
}

/** The text without comments, so that prose about `window.` does not count. */
function code(file: string): string {
  return readFileSync(join(src, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|(?<!:)\/\/.*$/gm, (c) =>
    c.replace(/[^\n]/g, ' '),
  );
}

function importsOf(file: string): string[] {
  return [...code(file).matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map((m) => m[1]);
}

function runtimeImportsOf(file: string): string[] {
  return [...code(file).matchAll(/^(import|export)\s+(type\s)?[^;]*?from\s*'([^']+)'/gms)]
    .filter((m) => !m[2])
    .map((m) => m[3]);
}

function cycle(graph: Map<string, string[]>): string[] | null {
  const done = new Set<string>();
  const visit = (file: string, path: string[]): string[] | null => {
    if (path.includes(file)) return [...path.slice(path.indexOf(file)), file];
    if (done.has(file)) return null;
    for (const next of graph.get(file) ?? []) {
      const found = visit(next, [...path, file]);
      if (found) return found;
    }
    done.add(file);
    return null;
  };
  for (const file of graph.keys()) {
    const found = visit(file, []);
    if (found) return found;
  }
  return null;
}
