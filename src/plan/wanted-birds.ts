/** Which birds a plan is for: the site's wishes with their guides, and what is wrong with the wishes. */
import type { BirdGuide, Region } from '../birds/guide.ts';
import { birdById, birdGuides, birdsOf } from '../birds/index.ts';
import { isRegion, regions } from '../birds/regions.ts';
import { birdFor } from '../criteria/bird-for.ts';
import { unusedSettings } from '../criteria/unused-settings.ts';
import type { Issue, Site, Wanted } from '../site/types.ts';

export interface WantedBirds {
  readonly wanted: readonly Wanted[];
  /** Guides of every bird wanted or standing, with the site's own figures; by id. */
  readonly guides: ReadonlyMap<string, BirdGuide>;
  readonly issues: readonly Issue[];
}

/** The bird a trail of the region is most often laid out for, when nobody says (ours). */
const usual: Record<Region, string> = {
  'eastern-north-america': 'eastern-bluebird',
  'western-north-america': 'western-bluebird',
  europe: 'great-tit',
};

export function wantedBirds(site: Site): WantedBirds {
  const { settings } = site;
  const issues: Issue[] = unusedSettings(settings);
  const say = (id: string, severity: Issue['severity'], feature: string | null, sentence: string, fix: string) =>
    issues.push({ id, severity, feature, place: null, sentence, fix });
  const region = isRegion(settings.region) ? settings.region : null;
  if (!region)
    say(
      'unknown-region',
      'warning',
      null,
      `There is no region "${settings.region}".`,
      `Use one of: ${regions.map((r) => r.id).join(', ')}.`,
    );
  const known = settings.wanted.filter((wish) => {
    const guide = find(wish.bird);
    if (!guide)
      say('unknown-bird', 'warning', null, `There is no bird "${wish.bird}".`, `Use one of: ${names(region)}.`);
    else if (guide.pest)
      say('pest-wanted', 'warning', null, `${guide.name} is never planned for.`, 'Take it out of the birds wanted.');
    else if (region && !guide.regions.includes(region))
      say(
        'bird-of-another-region',
        'note',
        null,
        `${guide.name} is not a bird of this region; it is planned for as you asked.`,
        'Check the site’s region.',
      );
    return guide && !guide.pest;
  });
  const wanted = known.length > 0 ? known : assumed(site, region, say);
  const standing = site.features.flatMap((f) =>
    f.kind === 'post' && typeof f.properties.bird === 'string' ? [[f.id, f.properties.bird]] : [],
  );
  for (const [post, bird] of standing)
    if (!find(bird))
      say('unknown-bird', 'warning', post, `There is no bird "${bird}".`, `Use one of: ${names(region)}.`);
  const ids = new Set([...wanted.map((w) => w.bird), ...standing.map(([, bird]) => bird)]);
  const guides = new Map([...ids].flatMap((id) => (find(id) ? [[id, birdFor(birdById(id), settings)] as const] : [])));
  return { wanted, guides, issues };
}

type Say = (id: string, severity: Issue['severity'], feature: string | null, sentence: string, fix: string) => void;

/** Nobody said which birds: the region's usual one at every drawn post, two where none is drawn. */
function assumed(site: Site, region: Region | null, say: Say): Wanted[] {
  const bird = usual[region ?? 'eastern-north-america'];
  const drawn = site.features.filter((f) => f.kind === 'post').length;
  const sites = drawn || 2;
  say(
    'no-bird-wanted',
    'note',
    null,
    `No bird is asked for, so ${birdById(bird).name} is planned for, at ${sites} ${sites === 1 ? 'site' : 'sites'}.`,
    'Say which birds you want and how many sites of each.',
  );
  return [{ bird, sites }];
}

function find(id: string): BirdGuide | null {
  return birdGuides.find((guide) => guide.id === id) ?? null;
}

function names(region: Region | null): string {
  return (region ? birdsOf(region) : birdGuides.filter((g) => !g.pest)).map((g) => g.id).join(', ');
}
