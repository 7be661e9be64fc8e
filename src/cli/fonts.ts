/** Font files of the printed sheets as the command line finds them. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { SheetFonts } from '../print/pdf-fonts.ts';

const subsets = ['latin', 'latin-ext', 'greek'] as const;

export function sheetFonts(): SheetFonts {
  return {
    sans: files('source-sans-3', '400-normal'),
    sansBold: files('source-sans-3', '700-normal'),
    sansItalic: files('source-sans-3', '400-italic'),
    serif: files('source-serif-4', '400-normal'),
    serifBold: files('source-serif-4', '700-normal'),
    serifItalic: files('source-serif-4', '400-italic'),
  };
}

function files(family: string, cut: string): Uint8Array[] {
  const folder = join(dirname(createRequire(import.meta.url).resolve(`@fontsource/${family}/package.json`)), 'files');
  return subsets.map((subset) => readFileSync(join(folder, `${family}-${subset}-${cut}.woff`)));
}
