import { createHash } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { subjects } from '../../../layers/all.ts';
import { prepareGround } from '../../ground/prepare.ts';
import type { Plan } from '../../plan-types.ts';
import type { Sheet } from '../../print/display.ts';
import { type SheetName, sheetNames } from '../../print/input.ts';
import { makeSheets } from '../../print/make-sheets.ts';
import { sheetsToPdf } from '../../print/to-pdf.ts';
import { sheetToSvg } from '../../print/to-svg.ts';
import type { Site } from '../../site/types.ts';
import { canonicalText } from '../../site/write.ts';
import { declination } from '../../sky/declination.ts';
import { type Command, exit, type Invocation, Refusal } from '../command.ts';
import { sheetFonts } from '../fonts.ts';
import { numberOption } from '../options.ts';
import { planFrom, planHelp, planOptions, writeText } from './plan.ts';

const papers = ['letter', 'a4'] as const;
const orientations = ['portrait', 'landscape'] as const;
const variants = ['standard', 'ink-saver', 'large-print'] as const;

export const print: Command = {
  name: 'print',
  usage: 'SITE --out DIR',
  summary:
    'Makes the plan’s paper: index, detail maps, check sheet, box cards, labels, materials; as one PDF and a picture a sheet.',
  help: {
    '--out DIR': 'folder for the files; made when missing',
    '--paper WORD': `${papers.join(' or ')}; letter for a site in US units, else a4`,
    '--orientation WORD': `${orientations.join(' or ')}; landscape unless given`,
    '--scale N': 'detail maps at 1:N; else the roundest scale at which no two numbers touch',
    '--address URL': 'where phones find the app, for the QR code of the round; https only',
    '--revision WORD': 'printed beside the fingerprint of the site file; nothing unless given',
    '--variant WORD': variants.join(', '),
    '--sheets WORDS': `some of ${sheetNames.join(',')}`,
    ...planHelp,
  },
  options: {
    ...planOptions,
    out: { type: 'string' },
    paper: { type: 'string' },
    orientation: { type: 'string' },
    scale: { type: 'string' },
    variant: { type: 'string' },
    address: { type: 'string' },
    revision: { type: 'string' },
    sheets: { type: 'string' },
  },
  files: [1, 1],
  async run(invocation) {
    const { options, out } = invocation;
    if (typeof options.out !== 'string') throw new Refusal('"print" wants --out DIR, the folder for the sheets.');
    const { site, plan } = await planFrom(invocation);
    if (plan.boxes.length === 0) throw new Refusal('No box was placed, so there is nothing to print.', exit.trouble);
    const sheets = sheetsOf(site, plan, invocation);
    makeFolder(options.out);
    const pdf = join(options.out, 'round.pdf');
    writeText(pdf, await sheetsToPdf(sheets, sheetFonts(), { title: plan.siteName, date: plan.date }));
    for (const sheet of sheets) writeText(join(options.out, `${sheet.id}.svg`), sheetToSvg(sheet));
    out(`${pdf}: ${sheets.length} sheets`);
    for (const sheet of sheets) out(`  ${sheet.id}.svg  ${sheet.title}${sheet.scale ? `, 1:${sheet.scale}` : ''}`);
    return exit.done;
  },
};

function sheetsOf(site: Site, plan: Plan, { options }: Invocation): Sheet[] {
  const { frame } = prepareGround(site);
  const needle = declination(frame.centre, plan.date);
  const text = canonicalText(site);
  return makeSheets({
    site,
    plan,
    frame,
    layers: subjects,
    options: {
      paper: word(options, 'paper', papers) ?? (site.settings.units === 'us' ? 'letter' : 'a4'),
      orientation: word(options, 'orientation', orientations) ?? 'landscape',
      scale: numberOption(options, 'scale', 100, 50000) ?? null,
      variant: word(options, 'variant', variants) ?? 'standard',
      sheets: sheetList(options),
    },
    stamp: {
      date: plan.date,
      address: addressOf(options),
      revision: typeof options.revision === 'string' ? options.revision : '',
      hash: createHash('sha256').update(text).digest('hex'),
      declination: needle.degrees === null ? null : needle,
    },
  });
}

/** The app's address without anything behind it; null when none is given. */
function addressOf({ address }: Invocation['options']): string | null {
  if (typeof address !== 'string') return null;
  const url = URL.canParse(address) ? new URL(address) : null;
  if (url?.protocol !== 'https:') throw new Refusal(`--address wants https://…; it was given "${address}".`);
  return `${url.origin}${url.pathname}`;
}

function word<T extends string>(options: Invocation['options'], name: string, words: readonly T[]): T | undefined {
  const given = options[name];
  if (given === undefined) return undefined;
  const found = words.find((w) => w === given);
  if (!found) throw new Refusal(`--${name} wants ${words.join(' or ')}; it was given "${given}".`);
  return found;
}

function sheetList({ sheets }: Invocation['options']): SheetName[] {
  const usual = sheetNames.filter((name) => name !== 'landowner');
  if (typeof sheets !== 'string') return usual;
  return sheets.split(',').map((name) => {
    const found = sheetNames.find((s) => s === name.trim());
    if (!found) throw new Refusal(`--sheets wants some of ${sheetNames.join(', ')}; it was given "${name.trim()}".`);
    return found;
  });
}

function makeFolder(path: string): void {
  try {
    mkdirSync(path, { recursive: true });
  } catch (error) {
    throw new Refusal(`${path} could not be made: ${(error as Error).message}`, exit.file);
  }
}
