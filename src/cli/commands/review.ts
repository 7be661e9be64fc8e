import { birdGuides } from '../../birds/index.ts';
import { makeSuns } from '../../criteria/suns.ts';
import { prepareGround } from '../../ground/prepare.ts';
import { reviewTrail } from '../../plan/review-trail.ts';
import { isInvented } from '../../visits/invent.ts';
import { isSouth, seasonOf } from '../../visits/season-year.ts';
import { type Command, exit } from '../command.ts';
import { numberOption } from '../options.ts';
import { reviewLines } from '../review-text.ts';
import { loadVisits, todayOption } from '../visits-file.ts';
import { planFrom, planHelp, planOptions } from './plan.ts';

export const review: Command = {
  name: 'review',
  usage: 'SITE VISITS [--year YEAR]',
  summary: 'Looks back on the season: who nested where, what failed and why, which scores told, and what to change.',
  help: {
    '--year YEAR':
      'only the visits of this year (south of the equator: of the season that begins in it); else all together',
    '--today DATE': 'the day it is looked at, YYYY-MM-DD; else the day of the newest visit',
    '--json': 'the review as JSON',
    ...planHelp,
  },
  options: { ...planOptions, year: { type: 'string' }, today: { type: 'string' }, json: { type: 'boolean' } },
  files: [2, 2],
  async run(invocation) {
    const { files, options, out } = invocation;
    const year = numberOption(options, 'year', 1800, 2199);
    const { site, plan } = await planFrom({ ...invocation, options: { seconds: '0', ...options } });
    const posts = plan.boxes.map((box) => box.post);
    const file = loadVisits(files[1]!, site, posts, invocation);
    const south = isSouth(plan.boxes[0]?.position);
    const visits = file.visits.filter((visit) => year === undefined || seasonOf(visit.date, south) === year);
    const ground = prepareGround(site);
    const suns = makeSuns(ground, birdGuides);
    const today = todayOption(options, file);
    const trail = reviewTrail({ ground, suns, plan, visits, today, seed: site.settings.seed });
    const invented = file.invented || file.visits.some(isInvented);
    if (options.json) out(JSON.stringify({ invented, ...trail }, null, 1));
    else for (const line of reviewLines(trail, plan, invented, south)) out(line);
    return trail.review.nests.length === 0 ? exit.trouble : exit.done;
  },
};
