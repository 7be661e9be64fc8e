import { basename } from 'node:path';
import { importFeatures } from '../../edits/import-features.ts';
import { draftFeatures } from '../../exchange/draft-features.ts';
import { importFile } from '../../exchange/import.ts';
import type { FeatureNote, ImportOptions } from '../../exchange/import-types.ts';
import { type Mapping, readMapping } from '../../exchange/mapping.ts';
import { openStreetMapPreset } from '../../exchange/openstreetmap-preset.ts';
import { newSite } from '../../site/new-site.ts';
import { canonicalText } from '../../site/write.ts';
import { type Command, exit, type Invocation, Refusal } from '../command.ts';
import { issueLine, readBytes, readText } from '../site-file.ts';
import { writeText } from './plan.ts';

/** Names told one by one before the rest is only counted. */
const mostNotes = 50;

export const importSite: Command = {
  name: 'import',
  usage: 'FILE --as SITE [--mapping osm]',
  summary:
    'Makes a site file of a GeoJSON, GPX, KML, KMZ, CSV or zipped shapefile, and accounts for every thing in it.',
  help: {
    '--as SITE': 'site file to write',
    '--mapping NAME': '"osm", or a mapping file (JSON); else our own kinds first, then OpenStreetMap tags',
    '--projection TEXT':
      'EPSG code, WKT or proj4 text of a file that does not name its own; in a table also a UTM zone such as 17T',
    '--lat COLUMN': 'column of the latitude (or northing) in a table, with --lon COLUMN',
    '--name NAME': 'name of the site; else the file’s',
    '--date DATE': 'the day the plan is for, YYYY-MM-DD',
    '--json': 'the account as JSON',
  },
  options: {
    as: { type: 'string' },
    mapping: { type: 'string' },
    projection: { type: 'string' },
    lat: { type: 'string' },
    lon: { type: 'string' },
    name: { type: 'string' },
    date: { type: 'string' },
    json: { type: 'boolean' },
  },
  files: [1, 1],
  async run({ files, options, out, err }) {
    if (typeof options.as !== 'string') throw new Refusal('"import" wants --as SITE, the file to write.');
    const path = files[0]!;
    const from = basename(path);
    const imported = importFile(readBytes(path), from, optionsOf(options));
    const { report, issues, ask } = imported;
    for (const issue of issues) err(issueLine(issue));
    if (ask) err(ask.sentence);
    const name = typeof options.name === 'string' ? options.name : from.replace(/\.[^.]*$/, '');
    const dated = typeof options.date === 'string' ? { date: options.date } : {};
    const made = importFeatures(newSite(name, dated), draftFeatures(imported.features), from);
    if (options.json) out(JSON.stringify({ format: imported.format, ...report, issues }, null, 1));
    else for (const line of accountOf(from, report)) out(line);
    if ('refused' in made) throw new Refusal(`${made.refused} Nothing was written.`, exit.trouble);
    writeText(options.as, canonicalText(made.site));
    if (!options.json) out(`${options.as}: ${made.site.features.length} features`);
    return issues.some((issue) => issue.severity === 'error') ? exit.trouble : exit.done;
  },
};

function optionsOf(options: Invocation['options']): ImportOptions & { mapping?: Mapping } {
  const { projection, lat, lon, mapping } = options;
  if ((typeof lat === 'string') !== (typeof lon === 'string')) throw new Refusal('--lat and --lon go together.');
  return {
    ...(typeof projection === 'string' ? { projection } : {}),
    ...(typeof lat === 'string' && typeof lon === 'string' ? { columns: { lat, lon } } : {}),
    ...(typeof mapping === 'string' ? { mapping: mappingOf(mapping) } : {}),
  };
}

function mappingOf(name: string): Mapping {
  if (name === 'osm') return openStreetMapPreset;
  let value: unknown = null;
  try {
    value = JSON.parse(readText(name));
  } catch (error) {
    if (error instanceof Refusal) throw error;
  }
  const mapping = readMapping(value);
  if (!mapping) throw new Refusal(`${name} is no mapping. Use "osm", or a file made by the import page.`);
  return mapping;
}

type Account = ReturnType<typeof importFile>['report'];

function accountOf(from: string, { read, kept, made, dropped, repaired }: Account): string[] {
  const notes = (word: string, list: readonly FeatureNote[]) => [
    ...list.slice(0, mostNotes).map(({ what, why }) => `  ${word}: ${what}: ${why}`),
    ...(list.length > mostNotes ? [`  ${word}: ${list.length - mostNotes} more`] : []),
  ];
  return [
    `${from}: ${read} things read = ${kept} kept + ${dropped.length} dropped; ${made} features made`,
    ...notes('dropped', dropped),
    ...notes('repaired', repaired),
  ];
}
