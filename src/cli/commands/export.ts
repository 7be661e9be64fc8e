import { writePlacesCsv } from '../../exchange/csv.ts';
import { writeGpx } from '../../exchange/gpx.ts';
import { writeKml } from '../../exchange/kml.ts';
import { writePlanGeojson } from '../../exchange/plan-geojson.ts';
import { planThings } from '../../exchange/plan-things.ts';
import { prepareGround } from '../../ground/prepare.ts';
import type { Frame } from '../../ground/types.ts';
import type { Plan } from '../../plan-types.ts';
import type { Site } from '../../site/types.ts';
import { canonicalText } from '../../site/write.ts';
import { type Command, exit, Refusal } from '../command.ts';
import { planFrom, planHelp, planOptions, writeText } from './plan.ts';

type Writer = (plan: Plan, frame: Frame, site: Site) => string;

const writers: Readonly<Record<string, Writer>> = {
  gpx: (plan, frame) => writeGpx(planThings(plan, frame)),
  kml: (plan, frame) => writeKml(planThings(plan, frame)),
  csv: (plan, frame) => writePlacesCsv(planThings(plan, frame)),
  geojson: (plan, frame) => writePlanGeojson(plan, frame),
  site: (_plan, _frame, site) => canonicalText(site),
};

export const exportPlan: Command = {
  name: 'export',
  usage: 'SITE --to FORMAT [--out FILE]',
  summary: 'Writes the plan for a GPS receiver, a map program or a table.',
  help: {
    '--to FORMAT': Object.keys(writers).join(', '),
    '--out FILE': 'file to write; else it is printed',
    ...planHelp,
  },
  options: { ...planOptions, to: { type: 'string' }, out: { type: 'string' } },
  files: [1, 1],
  async run(invocation) {
    const { options, out } = invocation;
    const write = typeof options.to === 'string' && Object.hasOwn(writers, options.to) ? writers[options.to] : null;
    if (!write) throw new Refusal(`"export" wants --to ${Object.keys(writers).join(', ')}.`);
    const { site, plan } = await planFrom(invocation);
    const text = write(plan, prepareGround(site).frame, site);
    if (typeof options.out !== 'string') out(text);
    else {
      writeText(options.out, text);
      out(`${options.out}: ${plan.boxes.length} boxes`);
    }
    return exit.done;
  },
};
