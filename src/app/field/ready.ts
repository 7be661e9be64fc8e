/** "Ready for the field": what must hold before the walker leaves the signal. Facts in, rows out. */
import type { OfflineState } from '../offline/register.ts';

/** The photos shown under the drawing: those kept whole on this device, those that are lost, and those that are not kept at all. */
export interface PictureFacts {
  readonly kept: number;
  /** Bytes of the kept ones. */
  readonly bytes: number;
  /** Kept once, and not found any more. */
  readonly lost: number;
  /** Servers the tiles come from as the map is moved: nothing of it is kept. */
  readonly servers: readonly string[];
  /** Files read piece by piece, to be chosen again in each window. */
  readonly files: readonly string[];
}

export interface ReadyFacts {
  readonly offline: OfflineState;
  /** Whether this is the built app: only that one can be kept on the device. */
  readonly built: boolean;
  /** First letters of the plan's hash; null without a plan. */
  readonly hash: string | null;
  readonly boxes: number;
  /** Whether the open site stands where its last plan was made from. */
  readonly planIsCurrent: boolean;
  /** Null when the browser does not say. */
  readonly persisted: boolean | null;
  /** Bytes; null when not said. */
  readonly used: number | null;
  readonly room: number | null;
  /** Bytes of the app itself on the device; null when not known. */
  readonly appSize: number | null;
  /** What the shown photos under the drawing need; null while that is being read. */
  readonly picture: PictureFacts | null;
  readonly visitsKept: 'kept' | 'memory';
  readonly where: 'fix' | 'denied' | 'none' | 'not-asked';
}

export type ReadyState = 'yes' | 'no' | 'careful';

export type ReadyId = 'app' | 'plan' | 'visits' | 'storage' | 'picture' | 'position' | 'room';

export interface ReadyRow {
  readonly id: ReadyId;
  readonly state: ReadyState;
}

/** Room below which photos and visits may soon not fit, bytes (ours). */
const tight = 50_000_000;

const app = (facts: ReadyFacts): ReadyState =>
  facts.offline === 'ready' || facts.offline === 'update-waiting' ? 'yes' : 'no';

const position = ({ where }: ReadyFacts): ReadyState =>
  where === 'fix' ? 'yes' : where === 'denied' ? 'no' : 'careful';

/** The drawing is always here, so a missing photo is no reason to stay. */
const picture = ({ picture: found }: ReadyFacts): ReadyState =>
  found && found.lost + found.servers.length + found.files.length === 0 ? 'yes' : 'careful';

/** Rows in the order to show. */
export function readyRows(facts: ReadyFacts): readonly ReadyRow[] {
  const room = facts.room === null || facts.used === null ? null : facts.room - facts.used;
  return [
    { id: 'app', state: app(facts) },
    { id: 'plan', state: facts.boxes === 0 ? 'no' : facts.planIsCurrent ? 'yes' : 'careful' },
    { id: 'visits', state: facts.visitsKept === 'kept' ? 'yes' : 'no' },
    { id: 'storage', state: facts.persisted ? 'yes' : 'careful' },
    { id: 'room', state: room === null ? 'careful' : room > tight ? 'yes' : 'no' },
    { id: 'picture', state: picture(facts) },
    { id: 'position', state: position(facts) },
  ];
}

/** Ready when nothing says no. */
export function isReady(rows: readonly ReadyRow[]): boolean {
  return rows.every((row) => row.state !== 'no');
}

/** "1.2 MB", for sizes on a device. */
export function sizeText(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  if (bytes < 1e6) return `${Math.round(bytes / 1000)} kB`;
  return bytes < 1e9 ? `${(bytes / 1e6).toFixed(1)} MB` : `${(bytes / 1e9).toFixed(1)} GB`;
}
