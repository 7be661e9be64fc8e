/** "Ready for the field": what must hold before the walker leaves the signal. Facts in, rows out. */
import type { OfflineState } from '../offline/register.ts';

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
  /** Whether the site shows a picture from a server, and how many of its tiles are on the device. */
  readonly picture: { readonly tiles: number; readonly bytes: number } | null;
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

/** Rows in the order to show. */
export function readyRows(facts: ReadyFacts): readonly ReadyRow[] {
  const room = facts.room === null || facts.used === null ? null : facts.room - facts.used;
  return [
    { id: 'app', state: app(facts) },
    { id: 'plan', state: facts.boxes === 0 ? 'no' : facts.planIsCurrent ? 'yes' : 'careful' },
    { id: 'visits', state: facts.visitsKept === 'kept' ? 'yes' : 'no' },
    { id: 'storage', state: facts.persisted ? 'yes' : 'careful' },
    { id: 'room', state: room === null ? 'careful' : room > tight ? 'yes' : 'no' },
    { id: 'picture', state: facts.picture === null || facts.picture.tiles > 0 ? 'yes' : 'careful' },
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
