/** One saved state of a site. Revisions are only ever added; `thinned` says which old ones may go. */
export interface Revision {
  readonly site: string;
  /** 1, 2, 3 … within the site. */
  readonly rev: number;
  readonly parent: number | null;
  /** Version of this record, so that an older window does not write over a newer one's work. */
  readonly schema: number;
  readonly name: string;
  /** What was done, for the list of revisions. */
  readonly sentence: string;
  /** Milliseconds since 1970. */
  readonly saved: number;
  /** Hex SHA-256 of `body`. */
  readonly sha256: string;
  readonly body: string;
}

/** The newest revision of a site; `removed` is when it was put in the bin, null while it is on the shelf. */
export interface Head {
  readonly site: string;
  readonly rev: number;
  readonly schema: number;
  readonly name: string;
  readonly saved: number;
  readonly sha256: string;
  readonly removed: number | null;
}

export const schema = 1;

/** The head that stands on a revision; a save takes the site out of the bin. */
export function headOf({ site, rev, schema, name, saved, sha256 }: Revision): Head {
  return { site, rev, schema, name, saved, sha256, removed: null };
}

/** Thinning reads every revision of the site, so only every eighth save does it. */
export function thinsAt(rev: number): boolean {
  return rev % 8 === 0;
}

const newest = 20;
const hour = 3_600_000;
const day = 24 * hour;

/**
 * Revision numbers that may be deleted: all but the newest 20, the last of each hour for a day, and the last of each day for
 * 30 days (ours). The newest is never among them.
 */
export function thinned(kept: readonly Pick<Revision, 'rev' | 'saved'>[], now: number): number[] {
  const byNewest = [...kept].sort((a, b) => b.rev - a.rev);
  const seen = new Set<string>();
  return byNewest
    .filter((revision, place) => {
      const age = now - revision.saved;
      const slot =
        age < day
          ? `h${Math.floor(revision.saved / hour)}`
          : age < 30 * day
            ? `d${Math.floor(revision.saved / day)}`
            : null;
      const first = slot !== null && !seen.has(slot);
      if (slot !== null) seen.add(slot);
      return place >= newest && !first;
    })
    .map((revision) => revision.rev);
}
