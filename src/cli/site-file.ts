/** Reading a site for a command, and saying what is wrong with it. */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { readSite } from '../site/read.ts';
import type { Issue, Site } from '../site/types.ts';
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
  for (const issue of issues.filter((i) => i.severity !== 'note')) err(issueLine(issue));
  if (!site) throw new Refusal(`${path} could not be opened as a site; nothing was written.`, exit.trouble);
  return { site, issues };
}

/** One line: severity, feature, sentence, fix. */
export function issueLine(issue: Issue): string {
  const place = issue.place ? ` (near ${issue.place[1].toFixed(5)}, ${issue.place[0].toFixed(5)})` : '';
  const feature = issue.feature === null ? '' : ` [${issue.feature}]`;
  return `${issue.severity}${feature}: ${issue.sentence}${place} ${issue.fix}`;
}
