/** Which criterion told success from failure on this trail, and how sure that is. */

import { seededRandom } from '../geometry/random.ts';
import type { Interval } from './intervals.ts';

/** Outcomes of one box under one set of scores (0–1, null = not judged). */
export interface BoxOutcome {
  readonly scores: Readonly<Record<string, number | null>>;
  readonly fledged: number;
  readonly failed: number;
}

export interface Told {
  readonly criterion: string;
  /** Chance that a nest which fledged stood at a higher score than one which failed: 0.5 says nothing. */
  readonly auc: number;
  /** 95 % by drawing boxes anew; null when the draws could not say. */
  readonly interval: Interval | null;
  /** Two-sided, boxes' scores shuffled; corrected for the number of criteria (Holm). */
  readonly p: number;
  readonly verdict: 'told' | 'told-against' | 'no-sign';
  readonly sentence: string;
}

export type ToldAnswer =
  | { readonly kind: 'told'; readonly criteria: readonly Told[] }
  | { readonly kind: 'too-few'; readonly sentence: string };

/** Least nests of either outcome, and boxes, before anything is said (ours). */
export const leastNests = 5;
export const leastBoxes = 8;
const shuffles = 999;
const draws = 400;

interface Cell {
  readonly score: number;
  readonly fledged: number;
  readonly failed: number;
}

/** AUC over cells sorted by score, ties counting half; null when one outcome is missing. */
function aucOf(cells: readonly Cell[]): number | null {
  let wins = 0;
  let [fledged, failed] = [0, 0];
  for (let i = 0; i < cells.length; ) {
    let [here, lost] = [0, 0];
    const { score } = cells[i]!;
    for (; i < cells.length && cells[i]!.score === score; i++) {
      here += cells[i]!.fledged;
      lost += cells[i]!.failed;
    }
    wins += here * (failed + lost / 2);
    fledged += here;
    failed += lost;
  }
  return fledged > 0 && failed > 0 ? wins / (fledged * failed) : null;
}

function shuffled<T>(items: readonly T[], random: () => number): T[] {
  const copy = [...items];
  for (let i = copy.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [copy[i], copy[j]] = [copy[j]!, copy[i]!];
  }
  return copy;
}

/** Share of shuffles at least as far from 0.5 as seen. Nests of one box stay together, for they are not independent. */
function permutationP(cells: readonly Cell[], seen: number, random: () => number): number {
  let extreme = 0;
  for (let i = 0; i < shuffles; i++) {
    const outcomes = shuffled(cells, random);
    const auc = aucOf(cells.map((cell, j) => ({ ...outcomes[j]!, score: cell.score })));
    if (auc !== null && Math.abs(auc - 0.5) >= Math.abs(seen - 0.5) - 1e-12) extreme++;
  }
  return (1 + extreme) / (1 + shuffles);
}

function bootstrap(cells: readonly Cell[], random: () => number): Interval | null {
  const found: number[] = [];
  for (let i = 0; i < draws; i++) {
    const drawn = cells.map(() => cells[Math.floor(random() * cells.length)]!).sort((a, b) => a.score - b.score);
    const auc = aucOf(drawn);
    if (auc !== null) found.push(auc);
  }
  if (found.length < draws / 2) return null;
  found.sort((a, b) => a - b);
  return { low: found[Math.floor(found.length * 0.025)]!, high: found[Math.ceil(found.length * 0.975) - 1]! };
}

/** Holm's step-down correction, in the order given. */
function holm(ps: readonly number[]): number[] {
  const order = ps.map((p, i) => ({ p, i })).sort((a, b) => a.p - b.p);
  const out = [...ps];
  let most = 0;
  order.forEach(({ p, i }, rank) => {
    most = Math.max(most, Math.min(1, p * (ps.length - rank)));
    out[i] = most;
  });
  return out;
}

const sums = (boxes: readonly BoxOutcome[], key: 'fledged' | 'failed') => boxes.reduce((sum, box) => sum + box[key], 0);

function tell(criterion: string, auc: number, interval: Interval | null, p: number): Told {
  const verdict = p > 0.05 ? 'no-sign' : auc > 0.5 ? 'told' : 'told-against';
  const between = interval ? `, 95 % ${interval.low.toFixed(2)}–${interval.high.toFixed(2)}` : '';
  const figures = `${auc.toFixed(2)}${between}, p ${p < 0.001 ? '< 0.001' : p.toFixed(3)}`;
  const said = {
    told: 'told success from failure here: nests that fledged stood at higher scores',
    'told-against': 'ran against the outcome here: nests that failed stood at higher scores',
    'no-sign': 'shows no clear sign here',
  }[verdict];
  return { criterion, auc, interval, p, verdict, sentence: `${criterion} ${said} (${figures}).` };
}

/** Every criterion that could be compared, clearest first; or that there are too few nests to tell. */
export function whichTold(boxes: readonly BoxOutcome[], seed: number): ToldAnswer {
  const used = boxes.filter((box) => box.fledged + box.failed > 0);
  const [fledged, failed] = [sums(used, 'fledged'), sums(used, 'failed')];
  if (fledged < leastNests || failed < leastNests || used.length < leastBoxes) {
    return {
      kind: 'too-few',
      sentence: `Too few nests to tell: ${fledged} fledged and ${failed} failed in ${used.length} boxes; at least ${leastNests} of each in ${leastBoxes} boxes are needed.`,
    };
  }
  const random = seededRandom(seed);
  const ids = [...new Set(used.flatMap((box) => Object.keys(box.scores)))].sort();
  const rough = ids.flatMap((criterion) => {
    const cells = used
      .flatMap((box): Cell[] => {
        const score = box.scores[criterion] ?? null;
        return score === null ? [] : [{ score, fledged: box.fledged, failed: box.failed }];
      })
      .sort((a, b) => a.score - b.score);
    const auc = cells.length >= leastBoxes && new Set(cells.map((cell) => cell.score)).size > 1 ? aucOf(cells) : null;
    return auc === null
      ? []
      : [{ criterion, auc, p: permutationP(cells, auc, random), interval: bootstrap(cells, random) }];
  });
  const ps = holm(rough.map((one) => one.p));
  const criteria = rough
    .map((one, i) => tell(one.criterion, one.auc, one.interval, ps[i]!))
    .sort((a, b) => a.p - b.p || Math.abs(b.auc - 0.5) - Math.abs(a.auc - 0.5));
  return { kind: 'told', criteria };
}
