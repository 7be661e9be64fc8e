/** The sheets laid out as the browser prints them: one page each, true to size, without margins. */
import type { DrawnSheet } from './paper-state.ts';
import { sheetNode } from './sheet-node.ts';

const family = ['"Source Sans 3"', '"Source Serif 4"'];

/** Puts the pages beside the app (print.css shows them on paper alone). The returned function takes them away. */
export function layPages(sheets: readonly DrawnSheet[]): () => void {
  const root = document.createElement('div');
  root.className = 'mp-pages';
  root.append(pageRules(sheets), ...sheets.map(pageOf));
  document.body.append(root);
  return () => root.remove();
}

/** Fetches the sheets' letters before the printer asks: it does not wait for them. */
export async function loadLetters(): Promise<void> {
  const cuts = ['400 12px', '700 12px', 'italic 400 12px'];
  await Promise.all(cuts.flatMap((cut) => family.map((name) => document.fonts.load(`${cut} ${name}`, 'aĀ'))));
}

function pageOf(sheet: DrawnSheet): HTMLElement {
  const page = document.createElement('div');
  page.className = 'mp-page';
  page.style.setProperty('page', nameOf(sheet));
  page.style.width = `${sheet.width}mm`;
  // A hair less than the paper, so that rounding never starts a page of its own.
  page.style.height = `${sheet.height - 0.2}mm`;
  page.append(sheetNode(sheet.svg));
  return page;
}

/** One rule for each size of paper in the book. */
function pageRules(sheets: readonly DrawnSheet[]): HTMLStyleElement {
  const rules = new Map(
    sheets.map((sheet) => [
      nameOf(sheet),
      `@page ${nameOf(sheet)} { size: ${sheet.width}mm ${sheet.height}mm; margin: 0; }`,
    ]),
  );
  const style = document.createElement('style');
  style.textContent = [...rules.values()].join('\n');
  return style;
}

function nameOf({ width, height }: DrawnSheet): string {
  return `sheet-${Math.round(width * 10)}-${Math.round(height * 10)}`;
}
