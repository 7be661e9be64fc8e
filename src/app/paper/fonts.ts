/** The shipped fonts as the PDF writer wants them (.woff: it cannot read .woff2). Fetched from the app itself, when a PDF is asked for. */
import type { Face } from '../../print/font-widths.ts';
import type { SheetFonts } from '../../print/pdf-fonts.ts';

const sans = import.meta.glob<string>(
  '/node_modules/@fontsource/source-sans-3/files/source-sans-3-{latin,latin-ext,greek}-{400-normal,700-normal,400-italic}.woff',
  { query: '?url', import: 'default', eager: true },
);
const serif = import.meta.glob<string>(
  '/node_modules/@fontsource/source-serif-4/files/source-serif-4-{latin,latin-ext,greek}-{400-normal,700-normal,400-italic}.woff',
  { query: '?url', import: 'default', eager: true },
);

/** Alphabets, most used first: the order in which a letter is looked for. */
const subsets = ['latin', 'latin-ext', 'greek'] as const;

const faces: Readonly<Record<Face, readonly [urls: Readonly<Record<string, string>>, cut: string]>> = {
  sans: [sans, '400-normal'],
  sansBold: [sans, '700-normal'],
  sansItalic: [sans, '400-italic'],
  serif: [serif, '400-normal'],
  serifBold: [serif, '700-normal'],
  serifItalic: [serif, '400-italic'],
};

/** Every face's files. Throws with a sentence when one cannot be fetched. */
export async function fontBytes(): Promise<SheetFonts> {
  const rows = await Promise.all(
    Object.entries(faces).map(async ([face, [urls, cut]]) => [
      face,
      await Promise.all(filesOf(urls, cut).map(fetchOne)),
    ]),
  );
  return Object.fromEntries(rows) as SheetFonts;
}

function filesOf(urls: Readonly<Record<string, string>>, cut: string): string[] {
  return subsets.flatMap(
    (subset) => Object.entries(urls).find(([path]) => path.endsWith(`-${subset}-${cut}.woff`))?.[1] ?? [],
  );
}

async function fetchOne(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`a font file is missing (${answer.status})`);
  return new Uint8Array(await answer.arrayBuffer());
}
