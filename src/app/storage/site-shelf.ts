/** Where sites are kept. The app needs no more than this; a shelf in IndexedDB and one in memory both fit. */

/** One row of the list of sites. */
export interface ShelfEntry {
  readonly id: string;
  readonly name: string;
  /** Milliseconds since 1970 of the last save. */
  readonly saved: number;
}

/** `text` is a whole site file. Every promise rejects with an Error whose message can be shown to a person. */
export interface SiteShelf {
  list(): Promise<readonly ShelfEntry[]>;
  /** The newest saved text, or null when there is none of that id. */
  open(id: string): Promise<string | null>;
  /** Resolves only when it is kept for good: the app then says "saved". `sentence` says what was done, for the list of revisions. */
  save(id: string, name: string, text: string, sentence?: string): Promise<ShelfEntry>;
  rename(id: string, name: string): Promise<ShelfEntry>;
  remove(id: string): Promise<void>;
}
