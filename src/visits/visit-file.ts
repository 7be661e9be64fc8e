/** The visits file: JSON of its own, versioned, unknown members kept, the site named by its name and posts. */

import type { Issue, Severity } from '../site/types.ts';
import type { Visit } from './visit.ts';
import { isMembers, type Members, membersOf, rest, visitOf } from './visit-json.ts';
import { textOf } from './visit-members.ts';

export interface VisitFile {
  /** Name of the site the visits belong to. */
  readonly site: string;
  /** Whether the visits were made up. */
  readonly invented: boolean;
  readonly visits: readonly Visit[];
  readonly extra?: Readonly<Record<string, unknown>>;
}

export interface ReadVisits {
  /** Null when the text holds no visits file at all. */
  readonly file: VisitFile | null;
  readonly issues: readonly Issue[];
}

/** The version this program writes. */
export const visitFileVersion = 1;
/** Letters, or bytes, of a file that are read at most (ours). */
export const largestVisitFile = 60_000_000;
const mostVisits = 100_000;

function issue(id: string, severity: Severity, sentence: string, fix: string, feature: string | null = null): Issue {
  return { id, severity, feature, place: null, sentence, fix };
}

/** Said of a file of so many characters. */
export function visitFileTooBig(length: number): Issue {
  const said = (count: number) => count.toLocaleString('en-US');
  return issue(
    'visits-too-big',
    'error',
    `The file has ${said(length)} characters; at most ${said(largestVisitFile)} are read.`,
    'Split it by year.',
  );
}

function parse(text: string): { members: Members } | { trouble: Issue } {
  if (text.length > largestVisitFile) return { trouble: visitFileTooBig(text.length) };
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return {
      trouble: issue(
        'visits-not-json',
        'error',
        'The file is not JSON, or breaks off before its end.',
        'Ask for it again; it may not have been sent whole.',
      ),
    };
  }
  if (!isMembers(value) || !('meadowpostVisits' in value) || !Array.isArray(value.visits)) {
    return {
      trouble: issue(
        'not-visits',
        'error',
        'This is not a file of visits.',
        'Choose a file that was shared from a round; a site file opens elsewhere.',
      ),
    };
  }
  return { members: value };
}

/** Reads a visits file; visits that cannot be read are named, all others are kept. Never throws. */
export function readVisitFile(text: string): ReadVisits {
  const parsed = parse(text);
  if ('trouble' in parsed) return { file: null, issues: [parsed.trouble] };
  const { members } = parsed;
  const issues: Issue[] = [];
  if (typeof members.meadowpostVisits !== 'number' || members.meadowpostVisits > visitFileVersion) {
    issues.push(
      issue(
        'visits-newer',
        'warning',
        'The file was made by a newer Meadowpost.',
        'What is known is read; update before saving over it.',
      ),
    );
  }
  const list = members.visits as readonly unknown[];
  if (list.length > mostVisits)
    issues.push(
      issue(
        'visits-too-many',
        'error',
        `The file has ${list.length} visits; the first ${mostVisits} are read.`,
        'Split it by year.',
      ),
    );
  const visits: Visit[] = [];
  list.slice(0, mostVisits).forEach((entry, index) => {
    const visit = isMembers(entry) ? visitOf(entry) : null;
    const name = `visit ${index + 1}`;
    if (visit === null) {
      issues.push(
        issue(
          'visit-unreadable',
          'error',
          `The ${index + 1}. visit lacks an id, a post, a date or a state this program knows.`,
          'It is left out; open the file on the device that made it.',
          name,
        ),
      );
    } else {
      if (visit.extra?.unread)
        issues.push(
          issue(
            'visit-word-unknown',
            'warning',
            `The visit of ${visit.date} to box ${visit.box ?? visit.post} uses words this program does not know.`,
            'They are kept but not used.',
            visit.id,
          ),
        );
      visits.push(visit);
    }
  });
  const extra = rest(members, ['meadowpostVisits', 'site', 'invented', 'visits']);
  const file = {
    site: textOf(members.site) ?? '',
    invented: members.invented === true,
    visits,
    ...(extra ? { extra } : {}),
  };
  return { file, issues };
}

/** Trouble when the file belongs to another site; null when it is this one's. `posts` are the ids of this site's posts. */
export function otherSite(file: VisitFile, site: string, posts: readonly string[]): Issue | null {
  const here = new Set(posts);
  const strange = file.visits.filter((visit) => !here.has(visit.post)).length;
  if (file.site === site && strange < file.visits.length) return null;
  if (file.visits.length > 0 && strange === 0) {
    return file.site === site
      ? null
      : issue(
          'visits-site-renamed',
          'note',
          `The visits were made when the site was called “${file.site}”.`,
          'All posts are known here, so they are taken.',
        );
  }
  if (file.visits.length === 0) return null;
  return issue(
    'visits-other-site',
    'error',
    `These visits belong to “${file.site}”: ${strange} of ${file.visits.length} are to posts this site does not have.`,
    'Open that site first. Nothing was changed.',
  );
}

/** The text of a visits file; reading it gives the same visits back. */
export function writeVisitFile(file: VisitFile): string {
  const members = {
    meadowpostVisits: visitFileVersion,
    site: file.site,
    ...(file.invented ? { invented: true } : {}),
    ...file.extra,
    visits: file.visits.map(membersOf),
  };
  return `${JSON.stringify(members, null, 1)}\n`;
}
