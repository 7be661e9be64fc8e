/**
 * Paper is true to scale. The 200 m line is laid on the ellipsoid by GeographicLib (Karney 2013, geographiclib-geodesic 2.2.0), not by
 * our frame; bar, line and page are then measured in the finished PDF's own drawing commands. Tolerance 0.5 mm (issue 5).
 */
import geodesic from 'geographiclib-geodesic';
import { describe, expect, test } from 'vitest';
import type { Item, Sheet } from '../../src/print/display.ts';
import type { SheetInput } from '../../src/print/input.ts';
import { makeSheets } from '../../src/print/make-sheets.ts';
import type { Orientation, Paper } from '../../src/print/paper.ts';
import type { Variant } from '../../src/print/style.ts';
import { sheetsToPdf } from '../../src/print/to-pdf.ts';
import type { LonLat } from '../../src/site/types.ts';
import { inputOf, testFonts } from '../unit/print/fixture.ts';
import { type Painted, pathsOf } from './pdf-paths.ts';

const tolerance = 0.5;
const papers: Readonly<Record<Paper, readonly [number, number]>> = { letter: [215.9, 279.4], a4: [210, 297] };
const scales = [2000, 2400, 2500, 5000];
const variants: Variant[] = ['standard', 'ink-saver', 'large-print'];
const orientations: Orientation[] = ['portrait', 'landscape'];
const combinations = (Object.keys(papers) as Paper[]).flatMap((paper) =>
  orientations.flatMap((orientation) =>
    variants.flatMap((variant) => scales.map((scale) => ({ paper, orientation, variant, scale }))),
  ),
);

/** One box in the middle of an east–west line of 200 m on the ellipsoid; no other land, no round. */
function oneLine(centre: LonLat): SheetInput {
  const input = inputOf({ boxes: 1, land: false, centre });
  const ends = [90, 270].map((azimuth) => {
    const { lat2, lon2 } = geodesic.Geodesic.WGS84.Direct(centre[1], centre[0], azimuth, 100);
    return [lon2, lat2] as LonLat;
  });
  const line = {
    id: 'line',
    kind: 'stream' as const,
    geometry: { type: 'LineString' as const, coordinates: ends },
    properties: {},
  };
  const boxes = input.plan.boxes.map((box) => ({ ...box, at: { x: 0, y: 0 }, position: centre }));
  return { ...input, site: { ...input.site, features: [line] }, plan: { ...input.plan, boxes, rounds: [] } };
}

/** The longest two-point line drawn inside the map's clip. */
function mapLine(paths: readonly Painted[]): number {
  const lengths = paths
    .filter((one) => one.clipped && one.stroked && one.straight && one.points.length === 2)
    .map(({ points: [a, b] }) => Math.hypot(b![0] - a![0], b![1] - a![1]));
  return Math.max(0, ...lengths);
}

/** Widths, ink from edge to edge, of the two halves of the scale bar: closed upright boxes 1.4 mm high. */
function barWidths(paths: readonly Painted[]): number[] {
  return paths
    .filter((one) => one.stroked && one.closed && one.straight && !one.clipped && one.points.length === 4)
    .map(({ points, lineWidth }) => {
      const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
      return {
        width: Math.max(...xs) - Math.min(...xs) + lineWidth,
        height: Math.max(...ys) - Math.min(...ys) + lineWidth,
      };
    })
    .filter(({ height }) => Math.abs(height - 1.4) < 0.05)
    .map(({ width }) => width);
}

/** What the bar says it is: from the text the sheet gives to screen readers. */
function barClaims(sheet: Sheet): { metres: number; feet: number } {
  const alts = (items: readonly Item[]): string[] =>
    items.flatMap((one) => (one.item === 'group' ? [one.alt ?? '', ...alts(one.items)] : []));
  const said = alts(sheet.items).find((words) => words.startsWith('Scale bar'))!;
  const [, metres, feet] = /(\d+) meters and (\d+) feet/.exec(said)!;
  return { metres: Number(metres), feet: Number(feet) };
}

describe('printed scale', () => {
  const fonts = testFonts();
  test(`there are at least 48 combinations (${combinations.length})`, () => {
    expect(combinations.length).toBeGreaterThanOrEqual(48);
  });

  test.each([
    ['Ohio', [-83.1234, 40.1357]],
    ['Tasmania', [147.3, -42.9]],
    ['north Norway', [25.6, 70.9]],
  ] as [string, LonLat][])('bar, ground line and page are right in all combinations, %s', async (_, centre) => {
    const some = centre[1] > 40 && centre[1] < 41 ? combinations : combinations.filter((_, i) => i % 7 === 0);
    let worst = 0;
    for (const { paper, orientation, variant, scale } of some) {
      const input = oneLine(centre);
      const options = { paper, orientation, variant, scale, sheets: ['details' as const] };
      // In large print the key follows on a page of its own.
      const sheets = makeSheets({ ...input, options }).filter((sheet) => sheet.scale !== null);
      expect(sheets).toHaveLength(1);
      const [page] = pathsOf(await sheetsToPdf(sheets, fonts));
      const [short, long] = papers[paper];
      expect([page!.width, page!.height].map((one) => Math.round(one * 10) / 10)).toEqual(
        orientation === 'portrait' ? [short, long] : [long, short],
      );
      const line = mapLine(page!.paths);
      const { metres, feet } = barClaims(sheets[0]!);
      const widths = barWidths(page!.paths).sort((a, b) => a - b);
      const wanted = [(metres * 1000) / scale, (feet * 304.8) / scale].sort((a, b) => a - b);
      expect(widths, `${paper} ${orientation} ${variant} 1:${scale}`).toHaveLength(2);
      const errors = [line - 200_000 / scale, widths[0]! - wanted[0]!, widths[1]! - wanted[1]!].map(Math.abs);
      worst = Math.max(worst, ...errors);
      expect(Math.max(...errors), `${paper} ${orientation} ${variant} 1:${scale}: ${errors.join(', ')}`).toBeLessThan(
        tolerance,
      );
    }
    console.log(`printed scale: ${some.length} combinations, worst error ${worst.toFixed(4)} mm`);
  });

  test('a wrong scale would be seen', async () => {
    const sheets = makeSheets({
      ...oneLine([-83.1234, 40.1357]),
      options: { paper: 'letter', orientation: 'portrait', variant: 'standard', scale: 2500, sheets: ['details'] },
    });
    const [page] = pathsOf(await sheetsToPdf(sheets, fonts));
    expect(Math.abs(mapLine(page!.paths) - 200_000 / 2400)).toBeGreaterThan(tolerance);
  });
});
