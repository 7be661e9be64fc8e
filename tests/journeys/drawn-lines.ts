/** The strokes of a PDF page and where they lie on the paper, read by poppler's pdftocairo. */
import { execFileSync } from 'node:child_process';

/** The box around a stroked path's points, mm from the page's top left corner, and the stroke's own width, mm. */
export interface Stroke {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly pen: number;
}

/** Millimetres to the point. */
const mm = 25.4 / 72;

/** Every unfilled stroke of a page (from 1). */
export function strokesOf(pdf: string, page: number): Stroke[] {
  const svg = execFileSync('pdftocairo', ['-svg', '-f', String(page), '-l', String(page), pdf, '-'], {
    encoding: 'utf8',
    maxBuffer: 256e6,
  });
  const paths = svg.matchAll(
    /<path style="fill:none;stroke-width:([\d.]+);[^"]*" d="([^"]*)"(?: transform="matrix\(([^)]*)\)")?/g,
  );
  return [...paths].map(([, pen, data, matrix]) => boxOf(Number(pen), data!, matrix ?? '1,0,0,1,0,0'));
}

function boxOf(pen: number, data: string, matrix: string): Stroke {
  const [a, b, c, d, e, f] = matrix.split(',').map(Number) as [number, number, number, number, number, number];
  const flat = (data.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
  const xs: number[] = [];
  const ys: number[] = [];
  for (let i = 0; i + 1 < flat.length; i += 2) {
    xs.push((a * flat[i]! + c * flat[i + 1]! + e) * mm);
    ys.push((b * flat[i]! + d * flat[i + 1]! + f) * mm);
  }
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  const scale = Math.sqrt(Math.abs(a * d - b * c));
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y, pen: pen * scale * mm };
}

/** What a ruler laid on a map page would find, mm. */
export interface Ruled {
  /** The left end of the calibration line. */
  readonly x: number;
  readonly y: number;
  /** The whole line, and its ticks from its left end. */
  readonly line: number;
  readonly ticks: readonly number[];
  /** The scale bar's halves, meters and then feet, from outer edge to outer edge of their ink. */
  readonly bars: readonly number[];
}

/** Measures the calibration line and the scale bar of a map page. Throws when the page has no single such line. */
export function ruled(pdf: string, page: number): Ruled {
  const strokes = strokesOf(pdf, page);
  // Found by its looks and its place, not its length: the one level hairline whose left end and right end both bear a tick.
  const isTick = (s: Stroke) => s.width < 0.02 && s.height > 1.5 && s.height < 3.5;
  const ticks = strokes.filter(isTick);
  const at = (s: Stroke, x: number) => ticks.some((t) => Math.abs(t.x - x) < 0.1 && t.y < s.y && t.y + t.height > s.y);
  const lines = strokes.filter((s) => s.height < 0.02 && s.width > 50 && at(s, s.x) && at(s, s.x + s.width));
  if (lines.length !== 1) throw new Error(`${lines.length} calibration lines on page ${page} of ${pdf}`);
  const line = lines[0]!;
  const own = ticks.filter((t) => t.y < line.y && t.y + t.height > line.y && t.x > line.x - 0.1);
  const bars = strokes.filter(
    (s) => s.x < line.x && Math.abs(s.y - line.y) < 4 && Math.abs(s.height + s.pen - 1.4) < 0.1,
  );
  return {
    x: line.x,
    y: line.y,
    line: line.width,
    ticks: own.map((t) => t.x - line.x).sort((p, q) => p - q),
    bars: bars.sort((p, q) => p.y - q.y).map((s) => s.width + s.pen),
  };
}
