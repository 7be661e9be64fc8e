/** Shares in words, small numbers told as what they are. The per cent sign never stands alone on a line: its blank does not break. */
import type { Share } from './review.ts';

/** From so many on a share is told in per cent as well (ours: below it one more or less moves it by more than 3 %). */
const many = 30;

const percent = (share: number) => Math.round(share * 100);

/** Such as "3 of 4 sites, could be anywhere from 30 to 95 %", or "24 of 36 nests, 67 % (95 % interval 50–80 %)". */
export function shareWords({ part, of, share, interval }: Share, things: string): string {
  if (share === null || interval === null) return `no ${things} to count`;
  const count = `${part} of ${of} ${things}`;
  const [low, high] = [percent(interval.low), percent(interval.high)];
  return of < many
    ? `${count}, could be anywhere from ${low} to ${high}\u00a0%`
    : `${count}, ${percent(share)}\u00a0% (95\u00a0% interval ${low}–${high}\u00a0%)`;
}
