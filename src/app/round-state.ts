/** What the Round place is at: visits, the draft, where the walker is. Part of the window's one state. */
import type { Experience } from '../visits/opening.ts';
import type { Visit } from '../visits/visit.ts';
import type { FieldRound } from './field/field-round.ts';
import type { Heading } from './field/heading.ts';
import type { Fix, Whereabouts } from './field/position.ts';
import type { VisitDraft } from './field/visit-draft.ts';
import type { AwakeState } from './field/wake-lock.ts';
import type { OfflineState } from './offline/register.ts';

export type RoundPage = 'walk' | 'list' | 'due' | 'paper' | 'key' | 'share' | 'ready';

/** `memory`: some visits could not be written and live in this window only. */
export type LogState = 'not-read' | 'reading' | 'kept' | 'memory';

export interface RoundState {
  readonly page: RoundPage;
  /** Visits of the open site, undone ones left out; and the site they are of. */
  readonly log: readonly Visit[];
  readonly logOf: string | null;
  readonly logState: LogState;
  /** Those not on the disk, and why. */
  readonly unsaved: readonly Visit[];
  readonly logTrouble: string | null;
  readonly observer: string;
  readonly device: string;
  readonly experience: Experience;
  /** First eight letters of the hash of the plan's numbers and places. */
  readonly hash: string | null;
  /** Index of the round that is walked. */
  readonly walker: number;
  /** Whether it is walked from its end. */
  readonly reversed: boolean;
  /** A round that came by code or file; it stands in place of the plan's. */
  readonly shared: FieldRound | null;
  /** Posts passed over on this walk. */
  readonly skipped: readonly string[];
  readonly draft: VisitDraft | null;
  /** Post the walker says to stand at. */
  readonly arrived: string | null;
  /** Whether the nest key is open over the draft. */
  readonly asking: boolean;
  readonly where: Whereabouts;
  readonly fixBefore: Fix | null;
  readonly heading: Heading | null;
  readonly awake: AwakeState;
  readonly offline: OfflineState | 'not-built';
  /** Whether the map keeps walker and box in view. */
  readonly follow: boolean;
}

export const firstRound: RoundState = {
  page: 'walk',
  log: [],
  logOf: null,
  logState: 'not-read',
  unsaved: [],
  logTrouble: null,
  observer: '',
  device: '',
  experience: 'new',
  hash: null,
  walker: 0,
  reversed: false,
  shared: null,
  skipped: [],
  draft: null,
  arrived: null,
  asking: false,
  where: { at: 'off' },
  fixBefore: null,
  heading: null,
  awake: 'off',
  offline: 'not-built',
  follow: true,
};
