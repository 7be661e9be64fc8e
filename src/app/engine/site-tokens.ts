/** Remembers which sites the worker already has, so that a question need not carry its site again. */
import type { Site } from '../../site/types.ts';

/** Sites a worker keeps at a time: the open one and the steps of a drag (ours). */
const kept = 6;

/** What is to be said to the worker before a question about a site. */
export interface Handover {
  readonly send: boolean;
  /** The site handed over last, which the worker still has: the new one may be told as a change of it. */
  readonly from: { readonly token: number; readonly site: Site } | null;
  /** Tokens of sites it may forget. */
  readonly forget: readonly number[];
}

export class SiteTokens {
  readonly #tokens = new WeakMap<Site, number>();
  readonly #sent = new WeakMap<object, number[]>();
  readonly #last = new WeakMap<object, { token: number; site: Site }>();
  #next = 1;

  /** The site's number; the same object has the same one. */
  of(site: Site): number {
    const token = this.#tokens.get(site) ?? this.#next++;
    this.#tokens.set(site, token);
    return token;
  }

  /** Counts the site as given to `port` from now on. */
  handOver(port: object, site: Site): Handover {
    const token = this.of(site);
    const before = this.#sent.get(port) ?? [];
    const after = [...before.filter((t) => t !== token), token];
    const forget = after.splice(0, Math.max(0, after.length - kept));
    this.#sent.set(port, after);
    const from = this.#last.get(port) ?? null;
    this.#last.set(port, { token, site });
    return { send: !before.includes(token), from, forget };
  }
}
