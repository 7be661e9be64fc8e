/** Visits in and out as files. Nothing is sent anywhere, nothing here is overwritten. */
import { birdGuides } from '../../birds/index.ts';
import { toCsv } from '../../exchange/csv.ts';
import { decodeText } from '../../exchange/decode-text.ts';
import type { Issue, Severity } from '../../site/types.ts';
import { dueCalendar } from '../../visits/calendar.ts';
import { dueOfTrail } from '../../visits/due-boxes.ts';
import { isInvented } from '../../visits/invent.ts';
import { nestsFrom } from '../../visits/nests.ts';
import {
  largestVisitFile,
  type ReadVisits,
  readVisitFile,
  visitFileTooBig,
  writeVisitFile,
} from '../../visits/visit-file.ts';
import { type Cell, dictionaryRows, nestRows, visitRows } from '../../visits/visit-rows.ts';
import { type Home, takeRead } from '../field/take-visits.ts';
import { fileName, saveFile } from '../paper/save-file.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { today } from './round-view.ts';
import { say } from './say.ts';
import { seasonVisits, setSeason, showsInvented, southOf, yearVisits } from './season-review.ts';
import { keepVisits, openVisits } from './visit-log.ts';
import { oddVisits } from './visit-odd.ts';

export type SeasonFile = 'visits' | 'nests' | 'dictionary' | 'all' | 'due';

/** Plain rows as CSV; a made-up season says so in a column of its own, so that no sheet can lose it. */
export function csvOf(rows: readonly (readonly Cell[])[], mark: string | null): string {
  const [head = [], ...body] = rows;
  const columns = head.map((name, i) => ({ name: String(name), value: (row: readonly Cell[]) => row[i] ?? null }));
  const marked = mark ? [{ name: mark, value: () => mark }] : [];
  return toCsv(body, [...marked, ...columns]);
}

/** Name ending, media type and text of a file of the season. */
function contents(state: AppState, file: SeasonFile): readonly [ending: string, type: string, text: string] {
  const invented = showsInvented(state);
  const mark = invented ? state.words.season.invented : null;
  const name = state.site?.settings.name ?? '';
  const visits = yearVisits(state);
  if (file === 'visits') return ['-visits.csv', 'text/csv', csvOf(visitRows(visits), mark)];
  if (file === 'nests')
    return ['-nests.csv', 'text/csv', csvOf(nestRows(nestsFrom(visits, birdGuides, today(), southOf(state))), mark)];
  if (file === 'dictionary') return ['-columns.csv', 'text/csv', csvOf(dictionaryRows(), null)];
  if (file === 'all')
    return ['-visits.json', 'application/json', writeVisitFile({ site: name, invented, visits: seasonVisits(state) })];
  const boxes = state.plan?.boxes ?? [];
  const due = dueOfTrail(boxes, seasonVisits(state), birdGuides, today(), state.round.experience, southOf(state));
  const title = mark ? `${mark} – ${name}` : name;
  return ['-due.ics', 'text/calendar', dueCalendar(title, due, new Date().toISOString())];
}

export function takeSeasonFile(store: Store, file: SeasonFile): void {
  const { state } = store;
  const [ending, type, text] = contents(state, file);
  const invented = showsInvented(state) ? '-invented' : '';
  saveFile(fileName(state.site?.settings.name ?? '', `${invented}${ending}`), type, text);
}

/** What the open site knows its visits by. */
function homeOf({ site, plan, round }: AppState): Home {
  const boxes = plan?.boxes ?? [];
  const drawn = site?.features.filter((one) => one.kind === 'post').map((one) => one.id) ?? [];
  return {
    site: site?.settings.name ?? '',
    hash: round.hash,
    boxes,
    posts: [...new Set([...drawn, ...boxes.map((box) => box.post), ...round.log.map((one) => one.post)])],
  };
}

/** What a file on the disk holds, whatever its encoding; trouble with it is an issue, never an exception. */
async function readFile(file: File): Promise<ReadVisits> {
  const trouble = (id: string, sentence: string, fix: string, severity: Severity = 'error'): Issue => ({
    id,
    severity,
    feature: null,
    place: null,
    sentence,
    fix,
  });
  // Too big is said before it is read.
  if (file.size > largestVisitFile) return { file: null, issues: [visitFileTooBig(file.size)] };
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    return {
      file: null,
      issues: [
        trouble('visits-unreadable', 'The file could not be read.', 'Copy it to this device and choose it again.'),
      ],
    };
  }
  const { text, issues } = decodeText(bytes);
  const told = issues.map((one) => trouble(one.id, one.sentence, one.fix, text === null ? 'error' : 'warning'));
  if (text === null) return { file: null, issues: told };
  const read = readVisitFile(text);
  return { ...read, issues: [...read.issues, ...told] };
}

/** Takes a visits file in, with a report. Made-up visits are shown apart and never join the real ones. */
export async function bringVisits(store: Store, file: File): Promise<void> {
  await openVisits(store);
  const read = await readFile(file);
  const { words, siteId } = store.state;
  const { season } = words;
  const home = homeOf(store.state);
  if (read.file && siteId !== null && (read.file.invented || read.file.visits.some(isInvented))) {
    const taken = takeRead([], read, home);
    if (taken.refused === null) {
      setSeason(store, { invented: { siteId, visits: taken.added }, year: null, taken: null, page: 'review' });
      say(store, 'tell', season.importInvented(file.name, taken.added.length));
      return;
    }
    setSeason(store, { taken: { name: file.name, taken } });
    return;
  }
  const taken = takeRead(store.state.round.log, read, home);
  const issues = [...taken.issues, ...oddVisits(store.state, taken.added)];
  if (taken.added.length > 0 && !(await keepVisits(store, taken.added))) say(store, 'trouble', season.importNotKept);
  setSeason(store, { taken: { name: file.name, taken: { ...taken, issues } }, trouble: null });
}
