/** Opens a .woff font to the plain one inside it (W3C WOFF 1.0): the PDF writer's own reader takes twenty times as long. */
import { unzlibSync } from 'fflate';

/** "wOFF" */
const signature = 0x774f4646;

/** Length of a font's own table row and of a .woff's, bytes. */
const row = 16;
const wrappedRow = 20;

/** No font table shipped is bigger; a file that claims more is refused before it is opened. */
const biggest = 20_000_000;

/** The plain font; bytes that are no .woff come back as they are. Throws on a damaged one. */
export function unwoff(bytes: Uint8Array): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 44 || view.getUint32(0) !== signature) return bytes;
  const count = view.getUint16(12);
  const tables = Array.from({ length: count }, (_, i) => tableAt(bytes, view, 44 + i * wrappedRow));
  const size = tables.reduce((sum, table) => sum + padded(table.data.length), 12 + count * row);
  const out = new Uint8Array(size);
  const into = new DataView(out.buffer);
  writeHead(into, view.getUint32(4), count);
  let at = 12 + count * row;
  for (const [i, { tag, sum, data }] of tables.entries()) {
    for (const [j, value] of [tag, sum, at, data.length].entries()) into.setUint32(12 + i * row + j * 4, value);
    out.set(data, at);
    at += padded(data.length);
  }
  return out;
}

function tableAt(bytes: Uint8Array, view: DataView, at: number): { tag: number; sum: number; data: Uint8Array } {
  const [tag, offset, packed, length, sum] = [0, 4, 8, 12, 16].map((step) => view.getUint32(at + step)) as [
    number,
    number,
    number,
    number,
    number,
  ];
  if (offset + packed > bytes.length || length > biggest) throw new Error('damaged .woff font');
  const part = bytes.subarray(offset, offset + packed);
  const data = packed < length ? unzlibSync(part, { out: new Uint8Array(length) }) : part;
  return { tag, sum, data };
}

function writeHead(into: DataView, flavor: number, count: number): void {
  const power = Math.floor(Math.log2(Math.max(1, count)));
  into.setUint32(0, flavor);
  into.setUint16(4, count);
  into.setUint16(6, 2 ** power * row);
  into.setUint16(8, power);
  into.setUint16(10, count * row - 2 ** power * row);
}

function padded(length: number): number {
  return (length + 3) & ~3;
}
