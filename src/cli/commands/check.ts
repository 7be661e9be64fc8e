import { basename } from 'node:path';
import { readSite } from '../../site/read.ts';
import { type Command, exit } from '../command.ts';
import { issueLine, readText } from '../site-file.ts';

export const check: Command = {
  name: 'check',
  usage: 'SITE',
  summary: 'Reads a site file and says everything that is wrong with it, where, and what to do.',
  help: { '--json': 'issues as JSON' },
  options: { json: { type: 'boolean' } },
  files: [1, 1],
  async run({ files, options, out }) {
    const { site, issues } = readSite(readText(files[0]), basename(files[0]));
    if (options.json) out(JSON.stringify({ opens: site !== null, issues }, null, 2));
    else {
      for (const issue of issues) out(issueLine(issue));
      const errors = issues.filter((i) => i.severity === 'error').length;
      const things = site ? `${site.features.length} features` : 'cannot be opened';
      out(`${files[0]}: ${things}, ${errors} errors, ${issues.length - errors} other remarks`);
    }
    return !site || issues.some((i) => i.severity === 'error') ? exit.trouble : exit.done;
  },
};
