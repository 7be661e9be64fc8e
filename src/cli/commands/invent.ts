import { inventForPlan } from '../../plan/invented-trail.ts';
import { writeVisitFile } from '../../visits/visit-file.ts';
import { type Command, exit, Refusal } from '../command.ts';
import { numberOption } from '../options.ts';
import { planFrom, planHelp, planOptions, writeText } from './plan.ts';

export const invent: Command = {
  name: 'invent',
  usage: 'SITE --out FILE [--seasons N] [--seed N]',
  summary: 'Makes up visits for the boxes of a plan, to try the review with. Every visit is marked as invented.',
  help: {
    '--out FILE': 'visits file to write',
    '--seasons N': 'how many, the last one in the year of the plan; 1 unless given',
    ...planHelp,
    '--seed N': 'the same seed makes up the same visits; 1 unless given',
  },
  options: { ...planOptions, out: { type: 'string' }, seasons: { type: 'string' } },
  files: [1, 1],
  async run(invocation) {
    const { options, out } = invocation;
    if (typeof options.out !== 'string') throw new Refusal('"invent" wants --out FILE.');
    const seasons = numberOption(options, 'seasons', 1, 20) ?? 1;
    if (!Number.isInteger(seasons)) throw new Refusal('--seasons wants a whole number.');
    const seed = numberOption(options, 'seed', 0, 4294967295) ?? 1;
    // The seed is that of the visits: the plan keeps its own, so that the boxes are the same ones.
    const { plan } = await planFrom({ ...invocation, options: { seconds: '0', ...options, seed: undefined } });
    const visits = inventForPlan(plan, seasons, seed);
    writeText(options.out, writeVisitFile({ site: plan.siteName, invented: true, visits }));
    out(`${options.out}: ${visits.length} INVENTED visits to ${plan.boxes.length} boxes`);
    return visits.length === 0 ? exit.trouble : exit.done;
  },
};
