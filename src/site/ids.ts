/** Ids of features: each stands once in a site. */

/** Gives out free ids. Ids the file itself uses are reserved first, so that a made-up one never takes the place of a given one. */
export class Ids {
  private readonly reserved: Set<string>;
  private readonly used = new Set<string>();
  private readonly next = new Map<string, number>();

  constructor(reserved: Iterable<string>) {
    this.reserved = new Set(reserved);
  }

  /** Takes an id for good; false when it was taken before. */
  take(id: string): boolean {
    if (this.used.has(id)) return false;
    this.used.add(id);
    return true;
  }

  /** Whether an id is taken or reserved. */
  has(id: string): boolean {
    return this.used.has(id) || this.reserved.has(id);
  }

  /** Takes `base-1`, `base-2` …, whichever is free first. */
  free(base: string): string {
    let n = this.next.get(base) ?? 1;
    while (this.has(`${base}-${n}`)) n++;
    this.next.set(base, n + 1);
    this.used.add(`${base}-${n}`);
    return `${base}-${n}`;
  }
}
