import type { BirdGuide } from '../../birds/guide.ts';
import { birdById, birdGuides } from '../../birds/index.ts';
import { scorePost } from '../../criteria/card.ts';
import { makeSuns } from '../../criteria/suns.ts';
import { prepareGround } from '../../ground/prepare.ts';
import { candidatesOf, placeCandidate } from '../../placement/candidates.ts';
import { wantedBirds } from '../../plan/wanted-birds.ts';
import type { PostCard } from '../../plan-types.ts';
import type { Site } from '../../site/types.ts';
import { cardLines } from '../card-text.ts';
import { type Command, exit, type Invocation, Refusal } from '../command.ts';
import { withSettings } from '../options.ts';
import { loadSite } from '../site-file.ts';

export const score: Command = {
  name: 'score',
  usage: 'SITE [--post ID] [--bird BIRD] [--at LON,LAT]',
  summary: 'Scores every drawn post, or one post or place, and says why.',
  help: {
    '--post ID': 'only this post',
    '--at LON,LAT': 'a place instead of the drawn posts (longitude first)',
    '--bird BIRD': 'for this bird; else the post’s own, else the one of the birds wanted that it suits best',
    '--json': 'cards as JSON',
  },
  options: { post: { type: 'string' }, at: { type: 'string' }, bird: { type: 'string' }, json: { type: 'boolean' } },
  files: [1, 1],
  async run(invocation) {
    const { files, options, out } = invocation;
    const { site } = loadSite(files[0], invocation);
    const cards = cardsOf(withSettings(site, { suggestGrid: null }), invocation);
    if (options.json) out(JSON.stringify(cards, null, 2));
    else
      for (const { name, forbidden, card } of cards) {
        for (const line of cardLines(name, card)) out(line);
        if (forbidden) out(`  No box may stand here: ${forbidden}.`);
      }
    return exit.done;
  },
};

function cardsOf(site: Site, { options }: Invocation): { name: string; forbidden: string | null; card: PostCard }[] {
  const ground = prepareGround(site);
  const { guides } = wantedBirds(site);
  const asked = typeof options.bird === 'string' ? [birdNamed(options.bird)] : [...guides.values()];
  const suns = makeSuns(ground, asked);
  const place =
    typeof options.at === 'string' ? placeCandidate('this place', ground.frame.toPlane(lonLat(options.at))) : null;
  const posts = place ? [place] : candidatesOf(ground).filter((c) => !options.post || c.id === options.post);
  if (posts.length === 0)
    throw new Refusal(
      options.post
        ? `There is no post "${options.post}" on this site.`
        : 'No posts are drawn on this site. Draw some, or name a place with --at LON,LAT.',
      exit.trouble,
    );
  return posts.map((post) => {
    const own = post.bird && !options.bird ? asked.filter((bird) => bird.id === post.bird) : [];
    const cards = (own.length ? own : asked).map((bird) => scorePost(ground, post, bird, suns));
    const card = cards.reduce((best, next) => (next.score > best.score ? next : best));
    return { name: post.name ?? post.id, forbidden: ground.forbidden(post.at)?.reason ?? null, card };
  });
}

function birdNamed(id: string): BirdGuide {
  if (!birdGuides.some((guide) => guide.id === id))
    throw new Refusal(`There is no bird "${id}". There are: ${birdGuides.map((g) => g.id).join(', ')}.`);
  return birdById(id);
}

function lonLat(text: string): [number, number] {
  const numbers = text.split(',').map(Number);
  if (
    numbers.length !== 2 ||
    !numbers.every(Number.isFinite) ||
    Math.abs(numbers[0]) > 180 ||
    Math.abs(numbers[1]) > 85
  )
    throw new Refusal(`--at wants LON,LAT in degrees, longitude first; it was given "${text}".`);
  return [numbers[0], numbers[1]];
}
