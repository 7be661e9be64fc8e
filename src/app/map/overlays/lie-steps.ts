/** Five steps of the score, pale to deep sky: for the lie of the land, its key and its contours. */
import type { Ink } from '../../theme.ts';

/** Source of the areas and their contours: of two sources each would have the map painted anew. */
export const lieSource = 'lie';

export interface LieStep {
  readonly from: number;
  readonly to: number;
  readonly color: string;
}

/** Where the steps begin, 0–100: the same for every bird and site, so that two pictures can be compared (ours). */
const starts = [0, 40, 55, 70, 85] as const;
/** Share of sky in the page's color: the deepest still lets ink and outlines be read. */
const shares = [0.06, 0.2, 0.36, 0.54, 0.74] as const;

export function lieSteps(ink: Ink): LieStep[] {
  return starts.map((from, i) => ({ from, to: starts[i + 1] ?? 100, color: mix(ink.paper, ink.sky, shares[i] ?? 1) }));
}

/** `share` of `b` in `a`, both `#rrggbb`. */
function mix(a: string, b: string, share: number): string {
  const part = (i: number) => {
    const [x, y] = [a, b].map((color) => Number.parseInt(color.slice(i, i + 2), 16)) as [number, number];
    return Math.round(x + (y - x) * share)
      .toString(16)
      .padStart(2, '0');
  };
  return `#${part(1)}${part(3)}${part(5)}`;
}
