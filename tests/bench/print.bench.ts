/** How long a forty-box book takes to become a PDF. Asked: at most 3 s for six pages or more (issue 5). Processor time. Run: npx tsx tests/bench/print.bench.ts */
import { makeSheets } from '../../src/print/make-sheets.ts';
import { sheetsToPdf } from '../../src/print/to-pdf.ts';
import { sheetToSvg } from '../../src/print/to-svg.ts';
import { inputOf, standardOptions, testFonts } from '../unit/print/fixture.ts';

const asked = 3000;

/** Milliseconds of processor time so far, so that other work on the machine counts less. */
const spent = (): number => process.cpuUsage().user / 1000 + process.cpuUsage().system / 1000;

async function main(): Promise<void> {
  const fonts = testFonts();
  for (const [name, names] of [
    ['map book and check sheet', ['index', 'details', 'check']],
    ['everything', standardOptions.sheets],
  ] as const) {
    const input = inputOf({ boxes: 40 }, { sheets: names });
    const runs = [];
    for (let i = 0; i < 3; i++) {
      const from = spent();
      const sheets = makeSheets(input);
      const drawn = spent();
      const svg = sheets.map(sheetToSvg).join('').length;
      const written = spent();
      const pdf = await sheetsToPdf(sheets, fonts);
      const done = spent();
      runs.push({
        pages: sheets.length,
        sheets: drawn - from,
        svg: written - drawn,
        pdf: done - written,
        kb: pdf.length / 1024,
        svgKb: svg / 1024,
      });
    }
    for (const [i, run] of runs.entries()) {
      const whole = run.sheets + run.pdf;
      const times = `sheets ${run.sheets.toFixed(0)} ms, PDF ${run.pdf.toFixed(0)} ms (${run.kb.toFixed(0)} kB), SVG ${run.svg.toFixed(0)} ms (${run.svgKb.toFixed(0)} kB)`;
      console.log(
        `${name}, ${run.pages} pages, run ${i + 1}: ${times}; ${(whole / asked).toFixed(2)} of the asked ${asked} ms`,
      );
    }
  }
}

/** How the time grows: all sheets of 10, 20 and 40 boxes, to the page. */
async function growth(): Promise<void> {
  const fonts = testFonts();
  const perPage: number[] = [];
  for (const boxes of [10, 20, 40]) {
    const input = inputOf({ boxes }, { sheets: standardOptions.sheets });
    const from = spent();
    const sheets = makeSheets(input);
    await sheetsToPdf(sheets, fonts);
    const each = (spent() - from) / sheets.length;
    perPage.push(each);
    const ratio = each / perPage[0]!;
    console.log(
      `${boxes} boxes, ${sheets.length} pages: ${each.toFixed(0)} ms a page, ${ratio.toFixed(2)} of that of 10`,
    );
  }
}

await main();
await growth();
