/** Boards and the cutting of them. */
import type { Units } from '../site/types.ts';

/** A board as sold. `width` is what it really measures, mm; `length` of one board, mm. */
export interface Board {
  readonly name: string;
  readonly width: number;
}

/**
 * What boards really measure. US: handbook § 6 (nominal 1x4 is 3 1/2 in …; from memory, 5 1/2 and 9 1/4 seen in plans), all 3/4 in thick.
 * Metric: planed widths common in Europe, from memory: ask the yard.
 */
export const boards: Readonly<
  Record<
    Units,
    { readonly thick: number; readonly length: number; readonly list: readonly Board[]; readonly source: string }
  >
> = {
  us: {
    thick: 19.05,
    length: 2438.4,
    list: [
      { name: '1x4', width: 88.9 },
      { name: '1x6', width: 139.7 },
      { name: '1x8', width: 184.15 },
      { name: '1x10', width: 234.95 },
      { name: '1x12', width: 285.75 },
    ],
    source: 'actual widths of US boards: common practice, from memory; measure yours',
  },
  metric: {
    thick: 18,
    length: 2400,
    list: [95, 120, 145, 170, 195, 220, 270].map((width) => ({ name: `18 × ${width} mm`, width })),
    source: 'planed European widths: common practice, from memory; measure yours',
  },
};

/** A saw's kerf and a fresh end for each cut, mm (ours). */
export const cutLoss = 5;

/** A piece: `across` the board's width, `along` its length, mm. */
export interface Piece {
  readonly part: string;
  readonly across: number;
  readonly along: number;
}

/** Where a piece is cut: the board that wastes least wood; wider than every board = joined from two or more strips of one board. */
export interface Cut extends Piece {
  readonly board: Board;
  /** Strips edge to edge; 1 when the board is wide enough. */
  readonly strips: number;
}

/** Chooses a board. `across` and `along` may be swapped where `turnable`; grain then runs the other way. */
export function chooseBoard(part: string, a: number, b: number, list: readonly Board[], turnable: boolean): Cut {
  const ways = turnable
    ? [
        [a, b],
        [b, a],
      ]
    : [[a, b]];
  let best: { cut: Cut; wood: number } | null = null;
  for (const [across, along] of ways as [number, number][])
    for (const board of list) {
      const strips = Math.max(1, Math.ceil((across - 1) / board.width));
      // A joint costs work and rots first: three times the wood (ours).
      const wood = strips * board.width * (along + cutLoss) * (strips > 1 ? 3 : 1);
      if (!best || wood < best.wood) best = { cut: { part, across, along, board, strips }, wood };
    }
  if (!best) throw new Error('no boards to choose from');
  return best.cut;
}

/** How many boards of one length hold these pieces, longest first into the first board with room; `tooLong` pieces fit in none. */
export function packBoards(
  lengths: readonly number[],
  board: number,
): { boards: number; used: number; tooLong: number } {
  const room: number[] = [];
  let tooLong = 0;
  let used = 0;
  for (const length of [...lengths].sort((a, b) => b - a)) {
    const need = length + cutLoss;
    if (need > board) {
      tooLong++;
      continue;
    }
    used += need;
    const i = room.findIndex((left) => left >= need);
    if (i >= 0) room[i] = room[i]! - need;
    else room.push(board - need);
  }
  return { boards: room.length, used, tooLong };
}
