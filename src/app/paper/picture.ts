/** A drawn sheet as a picture file that carries its own letters: SVG as it is, PNG by the browser's own painter. */
import type { SheetFonts } from '../../print/pdf-fonts.ts';
import { fontBytes } from './fonts.ts';
import type { DrawnSheet } from './paper-state.ts';

/** Dots to the inch of a PNG: Letter becomes 2,200 by 1,700, sharp on a screen and fair on paper (ours). */
const dots = 200;

const faces = {
  sans: ['Source Sans 3', 400, 'normal'],
  sansBold: ['Source Sans 3', 700, 'normal'],
  sansItalic: ['Source Sans 3', 400, 'italic'],
  serif: ['Source Serif 4', 400, 'normal'],
  serifBold: ['Source Serif 4', 700, 'normal'],
  serifItalic: ['Source Serif 4', 400, 'italic'],
} as const;

/** Letters of each file of a face, in the order `fontBytes` gives them. */
const ranges = [
  { css: 'U+0000-00FF,U+2000-206F,U+2212', test: /[\u0020-\u00ff]/ },
  { css: 'U+0100-02BA,U+1E00-1EFF,U+2C60-2C7F', test: /[\u0100-\u02ba\u1e00-\u1eff\u2c60-\u2c7f]/ },
  { css: 'U+0370-03FF', test: /[\u0370-\u03ff]/ },
] as const;

/** The sheet with the fonts it uses inside, so that it looks the same on every machine. */
export async function pictureSvg({ svg }: DrawnSheet): Promise<string> {
  const css = fontCss(await fontBytes(), svg);
  const head = svg.indexOf('>') + 1;
  return `${svg.slice(0, head)}\n<style>${css}</style>${svg.slice(head)}`;
}

/** Throws with a sentence when the browser cannot paint it. */
export async function picturePng(sheet: DrawnSheet): Promise<Blob> {
  const url = URL.createObjectURL(new Blob([await pictureSvg(sheet)], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.round((sheet.width / 25.4) * dots);
    canvas.height = Math.round((sheet.height / 25.4) * dots);
    const pen = canvas.getContext('2d');
    if (!pen) throw new Error('the browser gave no canvas');
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await blobOf(canvas);
  } finally {
    URL.revokeObjectURL(url);
  }
}

function blobOf(canvas: HTMLCanvasElement): Promise<Blob> {
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('the picture is too large for this browser'))));
  });
}

function fontCss(fonts: SheetFonts, svg: string): string {
  return Object.entries(faces)
    .flatMap(([face, [family, weight, style]]) =>
      (fonts[face as keyof typeof faces] ?? []).flatMap((bytes, i) => {
        const range = ranges[i];
        if (!range?.test.test(svg)) return [];
        const source = `url(data:font/woff;base64,${base64(bytes)}) format("woff")`;
        return `@font-face{font-family:"${family}";font-weight:${weight};font-style:${style};src:${source};unicode-range:${range.css}}`;
      }),
    )
    .join('');
}

function base64(bytes: Uint8Array): string {
  let letters = '';
  for (const byte of bytes) letters += String.fromCharCode(byte);
  return btoa(letters);
}
