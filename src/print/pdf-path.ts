/** Paths in the PDF's own operators. */

/** Hundredths of a point (0.0035 mm): a third of the file for nothing an eye or a ruler could see. */
function round(points: number): number {
  return Math.round(points * 100) / 100;
}

/** PDF path operators, collected. A quadratic curve becomes the cubic that is the same curve (PDF has no quadratic ones). */
export class PathWriter {
  /** Pieces of content, one operator each. */
  private readonly out: string[] = [];
  private x = 0;
  private y = 0;
  private readonly scale: number;

  constructor(scale: number) {
    this.scale = scale;
  }

  move(x: number, y: number): void {
    this.putTwo('m', x, y);
  }

  line(x: number, y: number): void {
    this.putTwo('l', x, y);
  }

  curve(...six: [number, number, number, number, number, number]): void {
    this.put('c', ...six);
  }

  quadratic(cx: number, cy: number, x: number, y: number): void {
    const third = (end: number, control: number) => end + ((control - end) * 2) / 3;
    this.put('c', third(this.x, cx), third(this.y, cy), third(x, cx), third(y, cy), x, y);
  }

  close(): void {
    this.out.push('h');
  }

  text(): string {
    return this.out.join('\n');
  }

  /** Nearly all pieces are of two numbers: written out, they take half the time. */
  private putTwo(order: string, x: number, y: number): void {
    this.x = x;
    this.y = y;
    this.out.push(`${round(x * this.scale)} ${round(y * this.scale)} ${order}`);
  }

  private put(order: string, ...numbers: number[]): void {
    this.y = numbers[numbers.length - 1]!;
    this.x = numbers[numbers.length - 2]!;
    this.out.push(`${numbers.map((one) => round(one * this.scale)).join(' ')} ${order}`);
  }
}
