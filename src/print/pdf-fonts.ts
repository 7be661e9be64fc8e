/** Font files for the PDF: a face may come in several files (Latin, Latin extended, Greek …); each letter is taken from the first that has it. */
import type { Face } from './font-widths.ts';
import { unwoff } from './unwoff.ts';

/**
 * Bytes of .ttf or .woff files by face, most used first (not .woff2: the PDF writer would print garbage without a word).
 * `sans` must be there; a face without files is set in `sans`.
 */
export type SheetFonts = { readonly sans: readonly Uint8Array[] } & Readonly<
  Partial<Record<Face, readonly Uint8Array[]>>
>;

interface GlyphPath {
  readonly commands: readonly { readonly command: string; readonly args: readonly number[] }[];
}

/** What is used of the font behind pdfkit's own. */
interface FontInside {
  readonly unitsPerEm: number;
  hasGlyphForCodePoint(code: number): boolean;
  layout(text: string): {
    readonly glyphs: readonly { readonly path: GlyphPath }[];
    readonly positions: readonly { readonly xAdvance: number }[];
  };
}

interface LoadedFile {
  /** Makes it the document's current font. */
  use(): unknown;
  has(code: number): boolean;
  layout(words: string): ReturnType<FontInside['layout']> & { readonly unitsPerEm: number };
  width(words: string, size: number): number;
}

/** The files of every face, opened. */
export type Letters = Readonly<Record<Face, readonly LoadedFile[]>>;

/** A piece of a line set from one file; `width` in points, `paths` in font units (`scale` turns them into shares of the size). */
export interface Run {
  readonly text: string;
  use(): unknown;
  readonly width: number;
  readonly paths: () => { scale: number; glyphs: { x: number; commands: GlyphPath['commands'] }[] };
}

const faces: readonly Face[] = ['sans', 'sansBold', 'sansItalic', 'serif', 'serifBold', 'serifItalic'];

/** Opens every file once and gives it a name in the document. */
export function loadFonts(doc: PDFKit.PDFDocument, fonts: SheetFonts): Letters {
  const open = (face: Face): LoadedFile[] =>
    (fonts[face] ?? []).map((bytes, i) => loadFile(doc, `${face}-${i}`, bytes));
  const sans = open('sans');
  const files = (face: Face) => (face !== 'sans' && fonts[face]?.length ? open(face) : sans);
  return Object.fromEntries(faces.map((face) => [face, files(face)])) as unknown as Letters;
}

/** What pdfkit keeps as its current font. */
interface Opened {
  readonly font: FontInside;
}

/** Registers a file; it is opened once, at the first letter asked of it, so alphabets that are not used cost nothing. */
function loadFile(doc: PDFKit.PDFDocument, name: string, bytes: Uint8Array): LoadedFile {
  if (bytes[0] === 0x77 && bytes[1] === 0x4f && bytes[2] === 0x46 && bytes[3] === 0x32)
    throw new Error(`font ${name} is a .woff2 file; give the .woff or .ttf`);

  const current = doc as unknown as { _font: Opened };
  let opened: Opened | null = null;
  // pdfkit forgets a name whose file equals one already open; keeping the opened font ourselves saves reading it again and again.
  const use = (): Opened => {
    if (opened) current._font = opened;
    else {
      doc.registerFont(name, unwoff(bytes) as unknown as string);
      doc.font(name);
      opened = current._font;
    }
    return opened;
  };
  return {
    use,
    has: (code) => use().font.hasGlyphForCodePoint(code),
    layout: (words) => ({ ...use().font.layout(words), unitsPerEm: use().font.unitsPerEm }),
    width: (words, size) => {
      use();
      return doc.fontSize(size).widthOfString(words);
    },
  };
}

/** A line cut where the file changes. A letter no file has is printed as "?". */
export function runsOf(text: string, files: readonly LoadedFile[], size: number): Run[] {
  const pieces: { file: LoadedFile; text: string }[] = [];
  for (const letter of text.replace(/[\p{Cc}\p{Cf}]/gu, '')) {
    const found = files.find((file) => file.has(letter.codePointAt(0) ?? 0));
    const file = found ?? files[0]!;
    const last = pieces[pieces.length - 1];
    if (last?.file === file) last.text += found ? letter : '?';
    else pieces.push({ file, text: found ? letter : '?' });
  }
  return pieces.map(({ file, text: words }) => ({
    text: words,
    use: file.use,
    width: file.width(words, size),
    paths: () => outlines(file, words),
  }));
}

function outlines(file: LoadedFile, words: string): ReturnType<Run['paths']> {
  const { glyphs, positions, unitsPerEm } = file.layout(words);
  let x = 0;
  const placed = glyphs.map((glyph, i) => {
    const at = x;
    x += positions[i]?.xAdvance ?? 0;
    return { x: at, commands: glyph.path.commands };
  });
  return { scale: 1 / unitsPerEm, glyphs: placed };
}
