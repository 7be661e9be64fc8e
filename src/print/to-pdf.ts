/** Sheets as one PDF file: text stays text, fonts embedded, tagged for screen readers, the same bytes for the same sheets. */
import PDFDocument from 'pdfkit';
import type { GroupItem, Item, Path, PathItem, Sheet, TextItem } from './display.ts';
import { type Letters, loadFonts, runsOf, type SheetFonts } from './pdf-fonts.ts';
import { PathWriter } from './pdf-path.ts';
import { safeLink } from './to-svg.ts';

export type { SheetFonts } from './pdf-fonts.ts';

type Document = PDFKit.PDFDocument;

/** Points to the millimetre. */
const k = 72 / 25.4;

/**
 * All sheets in their order as a PDF 1.7. Runs in Node, a page and a worker; a page should import this file only when a PDF is
 * asked for. The clock takes no part: `date` (ISO) becomes the file's date, 1970 when it is missing or no date.
 */
export async function sheetsToPdf(
  sheets: readonly Sheet[],
  fonts: SheetFonts,
  about: { title?: string; date?: string } = {},
): Promise<Uint8Array> {
  if (!fonts.sans[0]) throw new Error('sheetsToPdf needs at least one font file for "sans"');
  const doc = open(sheets, about);
  const done = collect(doc);
  const letters = loadFonts(doc, fonts);
  const book = doc.struct('Document');
  doc.addStructure(book);
  for (const sheet of sheets) {
    doc.addPage({ size: [sheet.width * k, sheet.height * k], margin: 0 });
    const pen: Pen = { doc, letters };
    const section = doc.struct('Sect');
    book.add(section);
    for (const item of sheet.items) drawTop(item, pen, section);
    section.end();
  }
  book.end();
  doc.end();
  return done;
}

interface Pen {
  readonly doc: Document;
  readonly letters: Letters;
}

function open(sheets: readonly Sheet[], about: { title?: string; date?: string }): Document {
  const time = Date.parse(about.date ?? '');
  return new PDFDocument({
    autoFirstPage: false,
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en',
    displayTitle: true,
    // No font at first: the browser build has none of the standard ones.
    font: null as unknown as string,
    info: {
      Title: about.title ?? sheets[0]?.title ?? 'Sheets',
      Producer: 'Meadowpost',
      Creator: 'Meadowpost',
      CreationDate: new Date(Number.isFinite(time) ? time : 0),
    },
  });
}

function collect(doc: Document): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    doc.on('data', (part: Uint8Array) => parts.push(part));
    doc.on('error', reject);
    doc.on('end', () => {
      const out = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
      let at = 0;
      for (const part of parts) {
        out.set(part, at);
        at += part.length;
      }
      resolve(out);
    });
  });
}

/** An item of the page or of a table: tagged ones become structure, the rest is marked as decoration. */
function drawTop(item: Item, pen: Pen, parent: PDFKit.PDFStructureElement): void {
  if (item.item === 'group' && item.tag) drawTagged(item, pen, parent);
  else if (item.item === 'group' && !item.clip) for (const one of item.items) drawTop(one, pen, parent);
  else {
    pen.doc.markContent('Artifact');
    draw(item, pen);
    pen.doc.endMarkedContent();
  }
}

function drawTagged(item: GroupItem, pen: Pen, parent: PDFKit.PDFStructureElement): void {
  const { doc } = pen;
  const element = doc.struct(item.tag as string, elementOptions(item));
  parent.add(element);
  if (item.tag === 'Table' || item.tag === 'TR') for (const one of item.items) drawTop(one, pen, element);
  else element.add(() => draw({ ...item, tag: undefined }, pen));
  element.end();
}

function elementOptions(item: GroupItem): object {
  return { ...(item.alt ? { alt: item.alt } : {}), ...(item.scope ? { scope: item.scope } : {}) };
}

function draw(item: Item, pen: Pen): void {
  if (item.item === 'path') drawPath(item, pen.doc);
  else if (item.item === 'text') drawText(item, pen);
  else drawGroup(item, pen);
}

function drawGroup(item: GroupItem, pen: Pen): void {
  if (!item.clip) {
    for (const one of item.items) draw(one, pen);
    return;
  }
  pen.doc.save();
  trace(item.clip, pen.doc);
  pen.doc.clip('even-odd');
  for (const one of item.items) draw(one, pen);
  pen.doc.restore();
}

function drawPath({ path, stroke, fill }: PathItem, doc: Document): void {
  if (path.length === 0 || (!stroke && !fill)) return;
  doc.save();
  trace(path, doc);
  if (stroke) {
    doc.lineWidth(stroke.width * k).lineJoin('round');
    if (stroke.dash) doc.dash(stroke.dash.map((one) => one * k) as unknown as number, {});
    if (!stroke.dash || stroke.round) doc.lineCap('round');
  }
  if (stroke && fill) doc.fillAndStroke(fill, stroke.color, 'even-odd');
  else if (fill) doc.fill(fill, 'even-odd');
  else if (stroke) doc.stroke(stroke.color);
  doc.restore();
}

/** Puts a path into the page in one piece of content, which is much faster than one call for each of its commands. */
function trace(path: Path, doc: Document): void {
  const writer = new PathWriter(k);
  let i = 0;
  const next = (): number => path[++i] as number;
  while (i < path.length) {
    const order = path[i];
    if (order === 'M') writer.move(next(), next());
    else if (order === 'L') writer.line(next(), next());
    else if (order === 'Q') writer.quadratic(next(), next(), next(), next());
    else if (order === 'C') writer.curve(next(), next(), next(), next(), next(), next());
    else writer.close();
    i++;
  }
  doc.addContent(writer.text());
}

function drawText(item: TextItem, { doc, letters }: Pen): void {
  const runs = runsOf(item.text, letters[item.face], item.size);
  const width = runs.reduce((sum, run) => sum + run.width, 0);
  const shift = item.anchor === 'middle' ? width / 2 : item.anchor === 'end' ? width : 0;
  doc.save();
  doc.translate(item.x * k, item.y * k);
  if (item.turn) doc.rotate(item.turn);
  let x = -shift;
  if (item.halo) for (const run of placed(runs, x)) drawHalo(run.paths, run.x, item.halo, item.size, doc);
  for (const run of runs) {
    run.use();
    doc.fontSize(item.size).fillColor(item.color ?? '#000000');
    const link = safeLink(item.link) ? { link: item.link } : {};
    doc.text(run.text, x, 0, { lineBreak: false, baseline: 'alphabetic', ...link });
    x += run.width;
  }
  doc.restore();
}

function* placed<T extends { width: number }>(runs: readonly T[], start: number): Generator<T & { x: number }> {
  let x = start;
  for (const run of runs) {
    yield { ...run, x };
    x += run.width;
  }
}

/** The letters' outlines in white: drawn as lines, so the words stand in the file once. */
function drawHalo(paths: () => GlyphOutlines, x: number, halo: number, size: number, doc: Document): void {
  const { scale, glyphs } = paths();
  const s = scale * size;
  const writer = new PathWriter(1);
  for (const glyph of glyphs) {
    const at = (i: number, a: readonly number[]): [number, number] => [x + (glyph.x + a[i]!) * s, -a[i + 1]! * s];
    for (const { command, args } of glyph.commands) {
      if (command === 'moveTo') writer.move(...at(0, args));
      else if (command === 'lineTo') writer.line(...at(0, args));
      else if (command === 'quadraticCurveTo') writer.quadratic(...at(0, args), ...at(2, args));
      else if (command === 'bezierCurveTo') writer.curve(...at(0, args), ...at(2, args), ...at(4, args));
      else writer.close();
    }
  }
  if (!glyphs.some((glyph) => glyph.commands.length > 0)) return;
  doc.lineJoin('round').lineWidth(2 * halo * k);
  doc.strokeColor('#ffffff');
  doc.addContent(writer.text());
  doc.stroke();
}

type GlyphOutlines = ReturnType<ReturnType<typeof runsOf>[number]['paths']>;
