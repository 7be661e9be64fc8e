/** Reading visits for a command, and saying what is wrong with them. */
import { basename } from 'node:path';
import type { Site } from '../site/types.ts';
import { dayOrNull } from '../visits/days.ts';
import { otherSite, readVisitFile, type VisitFile } from '../visits/visit-file.ts';
import { exit, type Invocation, Refusal } from './command.ts';
import { issueLine, readText } from './site-file.ts';

/** The visits of a file; its trouble goes to the error stream. `posts` are those of the plan. Refuses a file of another site. */
export function loadVisits(
  path: string,
  site: Site,
  posts: readonly string[],
  { err }: Pick<Invocation, 'err'>,
): VisitFile {
  const { file, issues } = readVisitFile(readText(path));
  for (const issue of issues) err(issueLine(issue));
  if (!file) throw new Refusal(`${basename(path)} could not be read as visits.`, exit.trouble);
  const known = [...posts, ...site.features.filter((one) => one.kind === 'post').map((one) => one.id)];
  const strange = otherSite(file, site.settings.name, known);
  if (strange) {
    err(issueLine(strange));
    if (file.visits.every((visit) => !known.includes(visit.post)))
      throw new Refusal(`None of the visits in ${basename(path)} is to a post of this site.`, exit.trouble);
  }
  return file;
}

/** A date option, or the day of the newest visit. */
export function todayOption(options: Invocation['options'], file: VisitFile): string {
  const given = options.today;
  if (typeof given === 'string') {
    if (dayOrNull(given) === null) throw new Refusal(`--today wants a date YYYY-MM-DD; it was given "${given}".`);
    return given;
  }
  const days = file.visits.map((visit) => visit.date).filter((date) => dayOrNull(date) !== null);
  return [...days, '1970-01-01'].sort().at(-1)!;
}
