/** Accessibility rules over a page, by axe-core. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

const source = readFileSync('node_modules/axe-core/axe.min.js', 'utf8');
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

interface AxeResult {
  readonly violations: readonly {
    id: string;
    help: string;
    nodes: readonly { html: string; failureSummary?: string }[];
  }[];
}

/** "rule: help: element" for every violation. */
export async function axeViolations(page: Page): Promise<string[]> {
  // The page's own rules forbid inline scripts, so the text is evaluated by the debugger, not added as an element.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(source);
  // Nothing is fetched anew, and what passes is not written down: a run takes a part of the time.
  const result = (await page.evaluate(
    (wanted) =>
      (globalThis as unknown as { axe: { run(o: object): Promise<AxeResult> } }).axe.run({
        runOnly: wanted,
        resultTypes: ['violations'],
        preload: false,
        iframes: false,
      }),
    tags,
  )) as AxeResult;
  return result.violations.flatMap((v) =>
    v.nodes.map((n) => `${v.id}: ${v.help}: ${n.html.slice(0, 160)} ${n.failureSummary ?? ''}`),
  );
}
