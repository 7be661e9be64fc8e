import { basename } from 'node:path';
import { unusedSettings } from '../../criteria/unused-settings.ts';
import { readSite } from '../../site/read.ts';
import { type Command, exit } from '../command.ts';
import { counted } from '../counted.ts';
import { issueLines, readText } from '../site-file.ts';

export const check: Command = {
  name: 'check',
  usage: 'SITE',
  summary: 'Reads a site file and says everything that is wrong with it, where, and what to do.',
  help: { '--json': 'issues as JSON' },
  options: { json: { type: 'boolean' } },
  files: [1, 1],
  async run({ files, options, out }) {
    const { site, issues: read } = readSite(readText(files[0]), basename(files[0]));
    const issues = site ? [...read, ...unusedSettings(site.settings)] : read;
    if (options.json) out(JSON.stringify({ opens: site !== null, issues }, null, 2));
    else {
      for (const line of issueLines(issues)) out(line);
      const errors = issues.filter((i) => i.severity === 'error').length;
      const things = site ? counted(site.features.length, 'feature') : 'cannot be opened';
      out(`${files[0]}: ${things}, ${counted(errors, 'error')}, ${counted(issues.length - errors, 'other remark')}`);
    }
    return !site || issues.some((i) => i.severity === 'error') ? exit.trouble : exit.done;
  },
};
