/** One pass over JSON text before `JSON.parse`: depth, the place of the first mistake, keys given twice, numbers no computer holds. */

/** What one pass over the text finds. Places are offsets into it. */
export interface ScanResult {
  /** Where the text stops being JSON and what was wanted there; null when it does not. */
  readonly mistake: { readonly at: number; readonly wanted: string } | null;
  /** Deepest nesting of brackets; scanning stops just past `mostDepth`. */
  readonly depth: number;
  /** Where a second document starts after the first; null when there is one only. */
  readonly secondDocument: number | null;
  readonly keysTwice: readonly { readonly key: string; readonly at: number }[];
  /** Places of `__proto__` keys. */
  readonly unsafeKeys: readonly number[];
  /** NaN, Infinity and numbers such as 1e999. */
  readonly notFinite: readonly { readonly at: number; readonly length: number }[];
  /** Whole numbers with more digits than are held exactly. */
  readonly tooLong: readonly { readonly at: number; readonly length: number }[];
}

type Want = 'value' | 'value or ]' | 'key' | 'key or }' | ':' | ', or ]' | ', or }' | 'end';

const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const word = /true|false|null/y;
const notNumber = /-?(?:NaN|Infinity)/y;

/** Length of what `pattern` (sticky) matches at `at`; 0 when it does not. */
function matchAt(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex - at : 0;
}

/** End of the string that starts at `at` (past its quote); -1 when it is broken, -2 when the text ends in it. */
function stringEnd(text: string, at: number): number {
  let escaped = false;
  for (let i = at + 1; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === 34) return escaped && !goodEscapes(text.slice(at + 1, i)) ? -1 : i + 1;
    if (c < 32) return -1;
    if (c !== 92) continue;
    escaped = true;
    i++;
  }
  return -2;
}

function goodEscapes(inside: string): boolean {
  const found = inside.match(/\\(?:u.{0,4}|.)/gs) ?? [];
  return found.every((one) => /^\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})$/.test(one));
}

/** Whether a whole number is not the one that will be held. */
function isTooLong(digits: string): boolean {
  return /^-?\d+$/.test(digits) && BigInt(digits) !== BigInt(Number(digits));
}

class Scanner {
  depth = 0;
  mistake: { at: number; wanted: string } | null = null;
  secondDocument: number | null = null;
  readonly keysTwice: { key: string; at: number }[] = [];
  readonly unsafeKeys: number[] = [];
  readonly notFinite: { at: number; length: number }[] = [];
  readonly tooLong: { at: number; length: number }[] = [];
  private readonly text: string;
  private readonly mostDepth: number;
  private want: Want = 'value';
  private at = 0;
  private openString = false;
  /** One entry an open bracket: the keys seen so far for `{`, null for `[`. */
  private readonly open: (Set<string> | null)[] = [];

  constructor(text: string, mostDepth: number) {
    this.text = text;
    this.mostDepth = mostDepth;
  }

  run(): ScanResult {
    while (this.mistake === null && this.depth <= this.mostDepth && this.secondDocument === null) {
      this.skipSpace();
      if (this.at >= this.text.length) break;
      this.step(this.text.charCodeAt(this.at));
    }
    const ended = this.at >= this.text.length && this.mistake === null;
    if (ended && this.want !== 'end') this.fail();
    return this;
  }

  private skipSpace(): void {
    for (; this.at < this.text.length; this.at++) {
      const c = this.text.charCodeAt(this.at);
      if (c !== 32 && c !== 10 && c !== 13 && c !== 9) return;
    }
  }

  /** A text that ends inside a string, a word or a number is cut short, not wrong. */
  private fail(): void {
    const rest = this.text.slice(this.at, this.at + 12);
    const cutShort = this.openString || (rest.length < 12 && /^[\w.+-]*$/.test(rest));
    this.mistake = { at: cutShort ? this.text.length : this.at, wanted: this.want };
  }

  private step(c: number): void {
    if (this.want === 'end') this.secondDocument = this.at;
    else if (this.want === ':') this.punctuation(c, 58, 'value');
    else if (this.want === ', or ]' || this.want === ', or }') this.betweenItems(c);
    else if (this.want === 'key' || this.want === 'key or }') this.key(c);
    else this.value(c);
  }

  private punctuation(c: number, wanted: number, next: Want): void {
    if (c === wanted) {
      this.at++;
      this.want = next;
    } else this.fail();
  }

  private betweenItems(c: number): void {
    const inObject = this.want === ', or }';
    if (c === 44) this.punctuation(c, 44, inObject ? 'key' : 'value');
    else if (c === (inObject ? 125 : 93)) this.close();
    else this.fail();
  }

  private close(): void {
    this.open.pop();
    this.at++;
    this.afterValue();
  }

  private afterValue(): void {
    const inside = this.open.at(-1);
    this.want = inside === undefined ? 'end' : inside === null ? ', or ]' : ', or }';
  }

  private key(c: number): void {
    const end = c === 34 ? stringEnd(this.text, this.at) : -1;
    if (c === 125 && this.want === 'key or }') this.close();
    else if (end < 0) this.took(end);
    else this.tookKey(end);
  }

  private tookKey(end: number): void {
    const raw = this.text.slice(this.at + 1, end - 1);
    const key = raw.includes('\\') ? String(JSON.parse(this.text.slice(this.at, end))) : raw;
    const seen = this.open.at(-1);
    if (key === '__proto__') this.unsafeKeys.push(this.at);
    if (seen?.has(key)) this.keysTwice.push({ key, at: this.at });
    seen?.add(key);
    this.at = end;
    this.want = ':';
  }

  private value(c: number): void {
    if (c === 93 && this.want === 'value or ]') this.close();
    else if (c === 123 || c === 91) this.openBracket(c === 123);
    else if (c === 34) this.took(stringEnd(this.text, this.at));
    else if (c === 45 || (c >= 48 && c <= 57)) this.number();
    else if (c === 78 || c === 73) this.notNumber();
    else this.took(this.at + (matchAt(word, this.text, this.at) || -1 - this.at));
  }

  private openBracket(isObject: boolean): void {
    this.open.push(isObject ? new Set() : null);
    this.depth = Math.max(this.depth, this.open.length);
    this.at++;
    this.want = isObject ? 'key or }' : 'value or ]';
  }

  private number(): void {
    const length = matchAt(number, this.text, this.at);
    const digits = this.text.slice(this.at, this.at + length);
    if (length > 0 && !Number.isFinite(Number(digits))) this.notFinite.push({ at: this.at, length });
    else if (length > 15 && isTooLong(digits)) this.tooLong.push({ at: this.at, length });
    if (length > 0) this.took(this.at + length);
    else this.notNumber();
  }

  private notNumber(): void {
    const length = matchAt(notNumber, this.text, this.at);
    if (length > 0) this.notFinite.push({ at: this.at, length });
    this.took(length > 0 ? this.at + length : -1);
  }

  private took(end: number): void {
    if (end >= 0) {
      this.at = end;
      this.afterValue();
    } else {
      this.openString = end === -2;
      this.fail();
    }
  }
}

/** Scans JSON text without recursion. NaN and Infinity are let through (and listed) so that one of them does not lose the file. */
export function scanJson(text: string, mostDepth: number): ScanResult {
  return new Scanner(text, mostDepth).run();
}

/** Line and column of a place in a text, both counted from 1. */
export function lineAndColumn(text: string, at: number): { line: number; column: number } {
  const before = text.slice(0, at);
  const line = before.split('\n').length;
  return { line, column: at - before.lastIndexOf('\n') };
}
