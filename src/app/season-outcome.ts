/** What became of a box in one word and one shape, for list and map alike. */
import type { BoxReview } from '../visits/review.ts';
import type { Words } from './words/en.ts';

/** `shape` is told apart without color. */
export interface BoxOutcomeLook {
  readonly shape: 'fledged' | 'failed' | 'unused' | 'other';
  readonly fledged: number;
  readonly failed: number;
  readonly kind: 'both' | 'fledged' | 'failed' | 'active' | 'unknown' | 'unused' | 'notLooked';
}

/** Nests that never held eggs do not count. */
export function outcomeOf({ nests, seasons }: Pick<BoxReview, 'nests' | 'seasons'>): BoxOutcomeLook {
  const count = (outcome: string) => nests.filter((nest) => nest.outcome === outcome).length;
  const [fledged, failed] = [count('fledged'), count('failed')];
  const look = (shape: BoxOutcomeLook['shape'], kind: BoxOutcomeLook['kind']) => ({ shape, kind, fledged, failed });
  if (fledged > 0) return failed > 0 ? look('other', 'both') : look('fledged', 'fledged');
  if (failed > 0) return look('failed', 'failed');
  if (count('unfinished') > 0) return look('other', 'active');
  if (count('unknown') > 0) return look('other', 'unknown');
  return look('unused', seasons.length === 0 ? 'notLooked' : 'unused');
}

/** Such as "fledged 2, failed 1". */
export function outcomeWords({ kind, fledged, failed }: BoxOutcomeLook, words: Words['season']['short']): string {
  if (kind === 'both') return words.both(fledged, failed);
  if (kind === 'fledged') return words.fledged(fledged);
  return kind === 'failed' ? words.failed(failed) : words[kind];
}
