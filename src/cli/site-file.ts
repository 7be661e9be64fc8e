/** Reading a site for a command, and saying what is wrong with it. */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { readSite } from '../site/read.ts';
import type { Issue, LonLat, Site } from '../site/types.ts';
import { exit, type Invocation, Refusal } from './command.ts';

/** The text of a file, or a refusal that says why not. */
export function readText(path: string): string {
  return new TextDecoder().decode(readBytes(path));
}

export function readBytes(path: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    const why =
      code === 'ENOENT'
        ? 'There is no such file. Check the spelling and the folder.'
        : code === 'EISDIR'
          ? 'That is a folder; name the file in it.'
          : code === 'EACCES'
            ? 'You may not read it; check its permissions.'
            : `It could not be read (${code ?? (error as Error).message}).`;
    throw new Refusal(`${path}: ${why}`, exit.file);
  }
}

/** The site of a file; its trouble goes to the error stream. Refuses when the file as a whole cannot be opened. */
export function loadSite(path: string, { err }: Pick<Invocation, 'err'>): { site: Site; issues: Issue[] } {
  const { site, issues } = readSite(readText(path), basename(path));
  for (const line of issueLines(issues.filter((i) => i.severity !== 'note'))) err(line);
  if (!site) throw new Refusal(`${path} could not be opened as a site; nothing was written.`, exit.trouble);
  return { site, issues };
}

/** Of one kind of trouble, how many are told one by one. */
const toldSingly = 20;

/** Issues as lines; where one kind comes in hundreds, the first of them and a count. */
export function issueLines(issues: readonly Issue[]): string[] {
  const told = new Map<string, number>();
  const lines: string[] = [];
  for (const issue of issues) {
    const before = told.get(issue.id) ?? 0;
    told.set(issue.id, before + 1);
    if (before < toldSingly) lines.push(issueLine(issue));
  }
  for (const [id, count] of told)
    if (count > toldSingly)
      lines.push(`and ${count - toldSingly} more like this (${id}); "check --json" lists them all`);
  return lines;
}

/** " (near 40.00000, -83.00000)", latitude first as people say it; empty where the sentence says it or it lies on no globe. */
function placeOf(sentence: string, [lon, lat]: LonLat): string {
  if (Math.abs(lat) > 90 || Math.abs(lon) > 180 || sentence.includes(`${lat.toFixed(4)}, ${lon.toFixed(4)}`)) return '';
  return ` (near ${lat.toFixed(5)}, ${lon.toFixed(5)})`;
}

/** One line: severity, feature, sentence, fix. */
export function issueLine(issue: Issue): string {
  const place = issue.place ? placeOf(issue.sentence, issue.place) : '';
  const feature = issue.feature === null ? '' : ` [${issue.feature}]`;
  return `${issue.severity}${feature}: ${issue.sentence}${place} ${issue.fix}`;
}
