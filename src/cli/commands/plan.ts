import { writeFileSync } from 'node:fs';
import { takePlan } from '../../edits/take-plan.ts';
import { makePlan } from '../../plan.ts';
import type { Plan } from '../../plan-types.ts';
import type { Site } from '../../site/types.ts';
import { type Command, exit, type Invocation, Refusal } from '../command.ts';
import { numberOption, wantedOption, withSettings, wordOption } from '../options.ts';
import { planLines } from '../plan-text.ts';
import { issueLine, loadSite } from '../site-file.ts';
import { loadSolver } from '../solver.ts';

/** Options of every command that makes a plan first. */
export const planOptions = {
  want: { type: 'string' },
  seed: { type: 'string' },
  seconds: { type: 'string' },
  walkers: { type: 'string' },
  'minimum-score': { type: 'string' },
  grid: { type: 'string' },
  'walk-limit': { type: 'string' },
  start: { type: 'string' },
  direction: { type: 'string' },
  kept: { type: 'string' },
} as const;

export const planHelp = {
  '--want "BIRD N, …"': 'sites of each bird instead of the file’s, such as "eastern-bluebird 9 pairs"',
  '--grid METERS': 'suggest candidates on a grid of this spacing, 5 or more',
  '--minimum-score N': 'posts scoring less are not chosen',
  '--walk-limit METERS': 'the best posts within a round of this length',
  '--start ID': 'id of the trailhead the round starts at',
  '--direction WAY': 'clockwise or counterclockwise',
  '--kept NAME': 'the plan kept in the file under this name, made again',
  '--walkers N': 'rounds to split the walk into',
  '--seed N': 'the same seed gives the same plan',
  '--seconds N': 'time limit of the proof; 0 = no proof',
};

/** The site with the command line's wishes, and its plan. Issues go to the error stream. */
export async function planFrom(invocation: Invocation, draws = 0): Promise<{ site: Site; plan: Plan }> {
  const { files, options, err } = invocation;
  const read = keptSite(loadSite(files[0], invocation).site, options.kept);
  const site = withSettings(read, {
    wanted: wantedOption(options),
    suggestGrid: numberOption(options, 'grid', 5, 1000),
    minimumScore: numberOption(options, 'minimum-score', 0, 100),
    walkers: numberOption(options, 'walkers', 1, 20),
    walkLimit: numberOption(options, 'walk-limit', 1, 1_000_000),
    seed: numberOption(options, 'seed', 0, 4294967295),
    direction: wordOption(options, 'direction', ['clockwise', 'counterclockwise'] as const),
    start: startOption(read, options.start),
  });
  const seconds = numberOption(options, 'seconds', 0, 3600);
  const plan = await makePlan(site, {
    loadSolver,
    seconds,
    draws,
    proof: seconds === 0 ? 'none' : seconds === undefined ? 'quick' : 'full',
  });
  for (const issue of plan.issues) err(issueLine(issue));
  return { site, plan };
}

/** A trailhead of the site by its id. */
function startOption(site: Site, id: Invocation['options'][string]): string | undefined {
  if (typeof id !== 'string') return undefined;
  const heads = site.features.filter(({ kind }) => kind === 'trailhead').map((head) => head.id);
  if (!heads.includes(id))
    throw new Refusal(
      `There is no trailhead "${id}". ${heads.length === 0 ? 'None is drawn.' : `There are: ${heads.join(', ')}.`}`,
    );
  return id;
}

/** The site as the kept plan of that name has it; the site itself when none is asked for. */
function keptSite(site: Site, name: Invocation['options'][string]): Site {
  if (typeof name !== 'string') return site;
  const { plans } = site.settings;
  if (!plans.some((one) => one.name === name))
    throw new Refusal(
      plans.length === 0
        ? 'The file keeps no plans.'
        : `The file keeps no plan "${name}". It keeps: ${plans.map((one) => one.name).join(', ')}.`,
    );
  const done = takePlan(site, name);
  if ('refused' in done) throw new Refusal(done.refused, exit.trouble);
  return done.site;
}

export const plan: Command = {
  name: 'plan',
  usage: 'SITE [--out FILE]',
  summary: 'Chooses the posts, numbers them along the walk, and says how good the choice is known to be.',
  help: {
    ...planHelp,
    '--draws N': 'draws of weights and knees for the sureness of each box; 200 unless given, 0 = none',
    '--out FILE': 'also write the whole plan as JSON',
    '--json': 'print the whole plan as JSON',
  },
  options: { ...planOptions, draws: { type: 'string' }, out: { type: 'string' }, json: { type: 'boolean' } },
  files: [1, 1],
  async run(invocation) {
    const { options, out } = invocation;
    const { site, plan: made } = await planFrom(invocation, numberOption(options, 'draws', 0, 10_000) ?? 200);
    if (typeof options.out === 'string') writeText(options.out, JSON.stringify(made, null, 1));
    if (options.json) out(JSON.stringify(made, null, 1));
    else for (const line of planLines(made, site.settings.units)) out(line);
    return made.boxes.length === 0 ? exit.trouble : exit.done;
  },
};

/** Writes a file or refuses with the reason. */
export function writeText(path: string, body: string | Uint8Array): void {
  try {
    writeFileSync(path, body);
  } catch (error) {
    throw new Refusal(`${path} could not be written: ${(error as Error).message}`, exit.file);
  }
}
