/** Drafts on their way from the worker to the page: a Blob crosses without being copied, and is unpacked in pieces that do not hold the page up. */
import type { Draft } from '../../exchange/import-types.ts';

/** Letters of a piece (ours: a few milliseconds of the page). */
const most = 400_000;

/** Pieces of JSON one after the other; `ends` are where they end, bytes. */
export interface PackedDrafts {
  readonly blob: Blob;
  readonly ends: readonly number[];
}

export function packDrafts(drafts: readonly Draft[]): PackedDrafts {
  const pieces: Blob[] = [];
  const ends: number[] = [];
  let texts: string[] = [];
  let size = 0;
  let end = 0;
  const close = () => {
    if (texts.length === 0) return;
    const piece = new Blob([`[${texts.join(',')}]`]);
    pieces.push(piece);
    end += piece.size;
    ends.push(end);
    texts = [];
    size = 0;
  };
  for (const draft of drafts) {
    const text = JSON.stringify(draft);
    if (size + text.length > most) close();
    texts.push(text);
    size += text.length;
  }
  close();
  return { blob: new Blob(pieces), ends };
}

/** The drafts again; the page can draw while the next piece is read. */
export async function unpackDrafts({ blob, ends }: PackedDrafts): Promise<Draft[]> {
  const drafts: Draft[] = [];
  for (const [i, end] of ends.entries()) {
    const text = await blob.slice(ends[i - 1] ?? 0, end).text();
    for (const draft of JSON.parse(text) as Draft[]) drafts.push(draft);
  }
  return drafts;
}
