/** Where the open site is kept and who may write it. Part of the window's one state. */
import type { Finding } from './storage/compare-copies.ts';

export interface KeepingState {
  /** `starting` until the browser has answered; `window`: nothing outlives this window. */
  readonly where: 'starting' | 'lasting' | 'window';
  /** Why nothing lasts; null where it does. */
  readonly why: string | null;
  /** `other-window`: another window writes this site; `newer`: a newer program saved it; `differ`: its two copies differ and none is chosen. These only look on. */
  readonly mode: 'write' | 'other-window' | 'newer' | 'differ';
  /** Sites whose two copies differ. */
  readonly findings: readonly Finding[];
  /** What lies over the open place. */
  readonly page: 'closed' | 'library' | 'recovery';
  /** Milliseconds since 1970 when the open site's file was last downloaded; null = never. */
  readonly exported: number | null;
  /** The file of the person's own that this site (its id) is written back to, as far as the window knows; `changed`: by something else since. */
  readonly ownFile: { readonly site: string; readonly name: string; readonly changed: boolean } | null;
  /** Whether the browser promised not to clear the sites by itself; null = not asked yet. */
  readonly promised: boolean | null;
  /** Why there is no second copy, or null. */
  readonly secondCopy: string | null;
  /** Grows with every change of the shelf, so that its list is read again. */
  readonly turn: number;
}

export const firstKeeping: KeepingState = {
  where: 'starting',
  why: null,
  mode: 'write',
  findings: [],
  page: 'closed',
  exported: null,
  ownFile: null,
  promised: null,
  secondCopy: null,
  turn: 0,
};

/** What the keeper has done by those who open sites. */
export interface KeeperHooks {
  /** Reads the open site again from the shelf. */
  reread(id: string): void;
  /** Makes this window the one that writes the open site. */
  takeOver(): void;
}

/** Who saves the open site, as the store and the actions know it; `actions/shelf-keeper.ts` is the one there is. */
export interface SiteKeeper {
  readonly hooks: KeeperHooks;
  /** Gets ready to open a site: saves what is unsaved and asks for the right to write it. Returns whether this window has it. */
  claim(id: string): Promise<boolean>;
  /** The site claimed is not opened after all. */
  drop(): void;
  /** Saves what is unsaved now; resolves when it is done or has failed. */
  flush(): Promise<void>;
  /** Takes the right to write from the other window. Returns whether it let go. */
  takeOver(): Promise<boolean>;
}
