/** The shipped fonts as MapLibre font faces: the map needs no glyph server and looks the same on every machine. */
import sansBold from '@fontsource/source-sans-3/files/source-sans-3-latin-600-normal.woff2?url';
import sansBoldExt from '@fontsource/source-sans-3/files/source-sans-3-latin-ext-600-normal.woff2?url';
import serifItalic from '@fontsource/source-serif-4/files/source-serif-4-latin-400-italic.woff2?url';
import serifBold from '@fontsource/source-serif-4/files/source-serif-4-latin-700-normal.woff2?url';
import serifItalicExt from '@fontsource/source-serif-4/files/source-serif-4-latin-ext-400-italic.woff2?url';

/** Names used by the layer files. */
export const fontNames = {
  fontName: 'Meadowpost Names',
  fontText: 'Meadowpost Text',
  fontBold: 'Meadowpost Numbers',
} as const;

/** What the latin-ext files of the fonts hold (from the package's own CSS). */
const ext = ['U+0100-02BA', 'U+02BD-02C5', 'U+02C7-02CC', 'U+1E00-1E9F', 'U+1EF2-1EFF', 'U+2C60-2C7F', 'U+A720-A7FF'];

/** The `font-faces` member of the style; addresses are made absolute because the map's worker has another base. */
export function fontFaces(base: string): Record<string, { url: string; 'unicode-range'?: string[] }[]> {
  const at = (url: string) => new URL(url, base).href;
  return {
    [fontNames.fontName]: [{ url: at(serifItalicExt), 'unicode-range': ext }, { url: at(serifItalic) }],
    [fontNames.fontText]: [{ url: at(sansBoldExt), 'unicode-range': ext }, { url: at(sansBold) }],
    [fontNames.fontBold]: [{ url: at(serifBold) }],
  };
}
