/** Reads drawn paths back out of a PDF's content streams: matrices, clips, strokes and fills, in millimetres from the page's top left. */
import { inflateSync } from 'node:zlib';

/** One painted path. `points` are all its corner points in mm; `straight` when it has no curves; `closed` when it ends where it began. */
export interface Painted {
  readonly points: readonly (readonly [number, number])[];
  readonly straight: boolean;
  readonly closed: boolean;
  readonly stroked: boolean;
  readonly filled: boolean;
  readonly clipped: boolean;
  /** mm */
  readonly lineWidth: number;
}

type Matrix = [number, number, number, number, number, number];

const mm = 25.4 / 72;

/** Paths of each page, in page order. Knows the operators that pdfkit writes; throws on a stream it cannot open. */
export function pathsOf(pdf: Uint8Array): { width: number; height: number; paths: Painted[] }[] {
  const bytes = Buffer.from(pdf);
  const raw = bytes.toString('latin1');
  const objects = new Map<string, string>();
  for (const found of raw.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) objects.set(found[1]!, found[2]!);
  const pages = [...objects.values()].filter((one) => /\/Type \/Page\b/.test(one) && /\/MediaBox/.test(one));
  return pages.map((page) => {
    const box = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(page)!;
    const content = objects.get(/\/Contents (\d+) 0 R/.exec(page)![1]!)!;
    const start = content.indexOf('stream\n') + 7;
    const stream = content.slice(start, content.lastIndexOf('\nendstream'));
    const text = inflateSync(Buffer.from(stream, 'latin1')).toString('latin1');
    const [width, height] = [Number(box[1]), Number(box[2])];
    return { width: width * mm, height: height * mm, paths: walk(text, height) };
  });
}

interface State {
  matrix: Matrix;
  width: number;
  clipped: boolean;
}

function walk(text: string, height: number): Painted[] {
  const out: Painted[] = [];
  const stack: State[] = [];
  let state: State = { matrix: [1, 0, 0, 1, 0, 0], width: 1, clipped: false };
  let operands: number[] = [];
  let points: [number, number][] = [];
  let straight = true;
  let closed = false;
  let clipping = false;
  const put = (x: number, y: number) => {
    const [a, b, c, d, e, f] = state.matrix;
    points.push([(a * x + c * y + e) * mm, (height - (b * x + d * y + f)) * mm]);
  };
  const paint = (stroked: boolean, filled: boolean) => {
    const grow = Math.sqrt(Math.abs(state.matrix[0] * state.matrix[3] - state.matrix[1] * state.matrix[2]));
    if (points.length > 0 && (stroked || filled))
      out.push({
        points,
        straight,
        closed,
        stroked,
        filled,
        clipped: state.clipped,
        lineWidth: state.width * grow * mm,
      });
    if (clipping) state = { ...state, clipped: true };
    [points, straight, closed, clipping] = [[], true, false, false];
  };
  // Strings and names are skipped whole, so that letters in them are no operators.
  const tokens = text
    .replace(/<[0-9a-fA-F]*>/g, ' ')
    .replace(/\((?:\\.|[^\\()])*\)/g, ' ')
    .split(/\s+/);
  for (const token of tokens) {
    const value = Number(token);
    if (token !== '' && Number.isFinite(value)) {
      operands.push(value);
      continue;
    }
    const o = operands;
    if (token === 'q') stack.push(state);
    else if (token === 'Q') state = stack.pop() ?? state;
    else if (token === 'cm') state = { ...state, matrix: times(o.slice(-6) as Matrix, state.matrix) };
    else if (token === 'w') state = { ...state, width: o[0]! };
    else if (token === 'm' || token === 'l') put(o[0]!, o[1]!);
    else if (token === 'c') {
      straight = false;
      put(o[4]!, o[5]!);
    } else if (token === 'v' || token === 'y') {
      straight = false;
      put(o[2]!, o[3]!);
    } else if (token === 'h') closed = true;
    else if (token === 'W' || token === 'W*') clipping = true;
    else if (token === 'n') paint(false, false);
    else if (token === 'S' || token === 's') paint(true, false);
    else if (token === 'f' || token === 'f*' || token === 'F') paint(false, true);
    else if (token === 'B' || token === 'B*' || token === 'b' || token === 'b*') paint(true, true);
    operands = [];
  }
  return out;
}

/** First `a`, then `b`. */
function times(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[1] * b[2],
    a[0] * b[1] + a[1] * b[3],
    a[2] * b[0] + a[3] * b[2],
    a[2] * b[1] + a[3] * b[3],
    a[4] * b[0] + a[5] * b[2] + b[4],
    a[4] * b[1] + a[5] * b[3] + b[5],
  ];
}
