import { birdGuides } from '../../birds/index.ts';
import { dueCalendar } from '../../visits/calendar.ts';
import { dueOfTrail } from '../../visits/due-boxes.ts';
import { isSouth } from '../../visits/season-year.ts';
import { type Command, exit, Refusal } from '../command.ts';
import { loadVisits, todayOption } from '../visits-file.ts';
import { planFrom, planHelp, planOptions, writeText } from './plan.ts';

export const due: Command = {
  name: 'due',
  usage: 'SITE VISITS --today DATE [--ics FILE]',
  summary: 'Says which box wants its next look when, most overdue first, and whether it may be opened.',
  help: {
    '--today DATE': 'the day it is asked on, YYYY-MM-DD',
    '--ics FILE': 'also write a calendar file',
    '--experienced': 'for walkers who know nestlings by age: opened a day longer',
    '--json': 'the list as JSON',
    ...planHelp,
  },
  options: {
    ...planOptions,
    today: { type: 'string' },
    ics: { type: 'string' },
    experienced: { type: 'boolean' },
    json: { type: 'boolean' },
  },
  files: [2, 2],
  async run(invocation) {
    const { files, options, out } = invocation;
    if (typeof options.today !== 'string') throw new Refusal('"due" wants --today DATE (YYYY-MM-DD).');
    const { site, plan } = await planFrom({ ...invocation, options: { seconds: '0', ...options } });
    const posts = plan.boxes.map((box) => box.post);
    const file = loadVisits(files[1]!, site, posts, invocation);
    const today = todayOption(options, file);
    const south = isSouth(plan.boxes[0]?.position);
    const experience = options.experienced ? 'experienced' : 'new';
    const list = dueOfTrail(plan.boxes, file.visits, birdGuides, today, experience, south);
    if (options.json) out(JSON.stringify(list, null, 1));
    else for (const one of list) out(one.sentence);
    if (typeof options.ics === 'string') {
      const name = file.invented ? `INVENTED – ${plan.siteName}` : plan.siteName;
      writeText(options.ics, dueCalendar(name, list, `${today}T00:00:00Z`));
      out(`${options.ics}: ${list.length} days`);
    }
    return exit.done;
  },
};
