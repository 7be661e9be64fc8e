/** Addresses of the small pictures: made when first asked for, given back when their sheets are gone. */
import type { DrawnSheet } from '../../paper/paper-state.ts';

export class Thumbs {
  readonly #urls = new Map<DrawnSheet, string>();

  of(sheet: DrawnSheet): string {
    const url = this.#urls.get(sheet) ?? URL.createObjectURL(new Blob([sheet.thumb], { type: 'image/svg+xml' }));
    this.#urls.set(sheet, url);
    return url;
  }

  /** Gives back those of sheets that are not among `kept`. */
  keep(kept: readonly DrawnSheet[]): void {
    for (const [sheet, url] of this.#urls) {
      if (kept.includes(sheet)) continue;
      URL.revokeObjectURL(url);
      this.#urls.delete(sheet);
    }
  }

  clear(): void {
    this.keep([]);
  }
}
