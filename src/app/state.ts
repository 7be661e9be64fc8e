/** Everything the window shows, as one immutable value. */
import type { ThemeName } from '../../layers/types.ts';
import type { History } from '../edits/history.ts';
import type { Plan } from '../plan-types.ts';
import type { Issue, Site, Units } from '../site/types.ts';
import { firstKeeping, type KeepingState } from './keeping-state.ts';
import { firstLand, type LandState } from './land-state.ts';
import { firstPaper, type PaperState } from './paper/paper-state.ts';
import { firstPictures, type PictureState } from './picture-state.ts';
import { firstPosts, type PostsState } from './posts-state.ts';
import { firstRound, type RoundState } from './round-state.ts';
import { firstSeason, type SeasonState } from './season-state.ts';
import type { Words } from './words/en.ts';
import { en } from './words/en.ts';

export const places = ['land', 'posts', 'round', 'paper', 'season'] as const;
export type Place = (typeof places)[number];

/** A box by its number, a post that is no box by its feature id, or any other drawn thing by its feature id. */
export type Selection =
  | { readonly of: 'box'; readonly number: number }
  | { readonly of: 'post'; readonly id: string }
  | { readonly of: 'feature'; readonly id: string };

/** One step of the history: the site as it was, and the sentence of the change that followed. */
export interface Step {
  readonly site: Site;
  readonly sentence: string;
}

/** Something said to the person. `undo` offers to take the change back; `tell` is read out and fades, `trouble` stays. */
export interface Message {
  readonly id: number;
  readonly kind: 'tell' | 'trouble' | 'undo';
  readonly sentence: string;
  /** A word on a button, and what it does. */
  readonly act?: { readonly word: string; readonly run: () => void };
}

/** What the engine is at; `done` is 0–1, null when the end is not known. */
export type EngineState =
  | { readonly at: 'rest' }
  | { readonly at: 'work'; readonly what: string; readonly done: number | null; readonly stop: () => void }
  | { readonly at: 'trouble'; readonly sentence: string };

export type Saved =
  | { readonly at: 'never' | 'demo' | 'saving' }
  | { readonly at: 'saved'; readonly time: number }
  | { readonly at: 'failed'; readonly why: string };

export type GroundLook = 'drawing' | 'photo' | 'lie';

export interface AppState {
  /** Id of the site on the shelf or of the demo; null before anything is open. */
  readonly siteId: string | null;
  readonly site: Site | null;
  /** Trouble found when the site was read. */
  readonly issues: readonly Issue[];
  /** The one history of the open site; null until the first change. `past` and `future` are read from it. */
  readonly history: History | null;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  /** The newest plan, and the site it was made from (older than `site` while a new one is being made). */
  readonly plan: Plan | null;
  readonly planOf: Site | null;
  readonly place: Place;
  readonly selection: Selection | null;
  readonly units: Units;
  readonly theme: ThemeName;
  readonly ground: GroundLook;
  readonly words: Words;
  readonly messages: readonly Message[];
  readonly engine: EngineState;
  readonly saved: Saved;
  /** Where the open site is kept, and who may write it. */
  readonly keeping: KeepingState;
  /** What the Land place is at. */
  readonly land: LandState;
  /** What the Posts place is at. */
  readonly posts: PostsState;
  /** What the Round place is at. */
  readonly round: RoundState;
  /** What the Season place is at. */
  readonly season: SeasonState;
  /** What lies under the drawing. */
  readonly pictures: PictureState;
  /** What the Paper place is at. */
  readonly paper: PaperState;
}

/** What the window starts with. */
export const firstState: AppState = {
  siteId: null,
  site: null,
  issues: [],
  history: null,
  past: [],
  future: [],
  plan: null,
  planOf: null,
  place: 'posts',
  selection: null,
  units: 'us',
  theme: 'light',
  ground: 'drawing',
  words: en,
  messages: [],
  engine: { at: 'rest' },
  saved: { at: 'never' },
  keeping: firstKeeping,
  land: firstLand,
  posts: firstPosts,
  round: firstRound,
  season: firstSeason,
  pictures: firstPictures,
  paper: firstPaper,
};
