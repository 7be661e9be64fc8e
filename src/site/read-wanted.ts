/** The setting `wanted`: how many sites for which bird. */
import { trouble } from './issues.ts';
import { isObject, member } from './json.ts';
import { cut } from './label.ts';
import type { Issue, Wanted } from './types.ts';

const mostSites = 9999;

/** Reads the list; lines that cannot be used are dropped and named in `issues`. */
export function readWanted(raw: unknown, issues: Issue[]): Wanted[] {
  if (raw === undefined || raw === null) return [];
  if (!Array.isArray(raw)) {
    const fix = 'Write it as [{"bird": "eastern-bluebird", "sites": 2}].';
    issues.push(trouble('setting-wrong-type', {}, 'The setting wanted is not a list; no birds are wanted.', fix));
    return [];
  }
  const wanted = new Map<string, Wanted>();
  for (const [i, line] of raw.entries()) {
    const read = readLine(line, `Line ${i + 1} of wanted`, issues);
    if (!read) continue;
    if (wanted.has(read.bird)) issues.push(twice(read.bird));
    else wanted.set(read.bird, read);
  }
  return [...wanted.values()];
}

function readLine(line: unknown, nth: string, issues: Issue[]): Wanted | null {
  const bird = member(line, 'bird');
  const sites = member(line, 'sites');
  const paired = member(line, 'paired');
  const said = lineTrouble(bird, sites, paired);
  if (said !== null) {
    const fix = 'Write it as {"bird": "eastern-bluebird", "sites": 2, "paired": false}.';
    issues.push(trouble('wanted-unreadable', {}, `${nth} ${said}; it is not used.`, fix));
    return null;
  }
  const { paired: _given, ...others } = isObject(line) ? line : {};
  const read = { ...others, bird: String(bird), sites: Number(sites) };
  return typeof paired === 'boolean' ? { ...read, paired } : read;
}

function lineTrouble(bird: unknown, sites: unknown, paired: unknown): string | null {
  if (typeof bird !== 'string' || bird.trim() === '') return 'names no bird';
  if (typeof sites !== 'number') return `gives no number of sites for ${cut(bird)}`;
  if (sites < 0) return `asks for ${sites} sites for ${cut(bird)}, less than none`;
  if (!Number.isInteger(sites) || sites > mostSites)
    return `asks for ${sites} sites for ${cut(bird)}: a whole number up to ${mostSites} is needed`;
  const usable = paired === undefined || paired === null || typeof paired === 'boolean';
  return usable ? null : `has a “paired” for ${cut(bird)} that is not true or false`;
}

function twice(bird: string): Issue {
  const sentence = `wanted names ${cut(bird)} twice; the first line is used.`;
  return trouble('wanted-twice', {}, sentence, 'Put both numbers into one line.');
}
