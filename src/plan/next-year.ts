/** Next year's plan drafted from a season's advice: one change of the site, however many boxes it touches. */
import { type Edit, freeIds, settle } from '../edits/edit.ts';
import { movePost } from '../edits/move-post.ts';
import { setPost } from '../edits/set-post.ts';
import { setProperty } from '../edits/set-property.ts';
import type { Plan, PlannedBox } from '../plan-types.ts';
import type { Site, SiteFeature } from '../site/types.ts';
import type { AdviceKind } from '../visits/advice.ts';
import type { BoxReview } from '../visits/review.ts';
import type { BetterSpot } from './better-spots.ts';
import type { TrailReview } from './review-trail.ts';

/** One thing the draft would do to one box. `cannot` = why it is not done; null when it is. */
export interface Change {
  readonly key: string;
  readonly post: string;
  readonly number: number | null;
  readonly kind: AdviceKind;
  readonly sentence: string;
  readonly cannot: string | null;
}

const points = (gain: number) => (Math.round(gain) === 1 ? '1 point' : `${Math.round(gain)} points`);

/** "12 points more", or "2.1 hours of afternoon sun, not 4.3; 8 points less" where shade was looked for. */
export function gainWords({ gain, sun }: Pick<BetterSpot, 'gain' | 'sun'>): string {
  const score = Math.round(gain) < 0 ? `${points(-gain)} less` : `${points(gain)} more`;
  return sun ? `${sun.there.toFixed(1)} hours of afternoon sun, not ${sun.here.toFixed(1)}; ${score}` : score;
}

const endings: readonly AdviceKind[] = ['move', 'retire'];

/** All changes the advice asks for, boxes in their order. A box that goes is not guarded or turned as well. */
export function changesOf(trail: TrailReview, plan: Plan): readonly Change[] {
  const byPost = new Map(plan.boxes.map((box) => [box.post, box]));
  return trail.review.boxes.flatMap((box) => {
    const planned = byPost.get(box.post) ?? null;
    const ends = box.advice.find((one) => endings.includes(one.kind));
    const stuck = ends?.kind === 'move' && trail.moves[box.post] === undefined;
    const kinds = ends ? [ends.kind, ...(stuck ? (['keep'] as const) : [])] : box.advice.map((one) => one.kind);
    const wanted = kinds.filter((kind) => kind !== 'keep' || planned !== null);
    return wanted.map((kind) => changeOf(box, kind, planned, trail));
  });
}

function changeOf(box: BoxReview, kind: AdviceKind, planned: PlannedBox | null, trail: TrailReview): Change {
  const name = `Box ${box.number ?? box.post}`;
  const move = trail.moves[box.post];
  const pair = trail.pairs[box.post];
  const facing = planned ? Math.round(planned.card.facing.best) : null;
  const [sentence, cannot] = (
    {
      keep: [`${name} stays and is marked as standing.`, null],
      move: move
        ? [`${name} moves to ${move.label} (${gainWords(move)}).`, null]
        : [`${name} should move.`, 'No better spot is known; choose one on the map.'],
      pair: pair
        ? [`${name} gets a second box: ${pair.label}.`, null]
        : [`${name} wants a second box.`, 'There is no free room for it at 20 ft.'],
      guard: [`${name} is marked “guard to be put up”.`, null],
      're-face':
        facing === null
          ? [`${name} should be turned.`, 'It is not in the plan.']
          : [`${name} turns to ${facing}°.`, null],
      retire: [`${name} is marked as retired.`, null],
    } as const satisfies Record<AdviceKind, readonly [string, string | null]>
  )[kind];
  const why = cannot ?? (planned === null ? 'It is not in the plan.' : null);
  return { key: `${box.post} ${kind}`, post: box.post, number: box.number, kind, sentence, cannot: why };
}

export interface Drafted {
  readonly edit: Edit;
  /** Changes that the site refused, with the reason. */
  readonly refused: readonly string[];
}

/** The site with these changes, as one edit; `year` is the year it is drafted for. */
export function draftNextYear(
  site: Site,
  plan: Plan,
  trail: TrailReview,
  changes: readonly Change[],
  year: number,
): Drafted {
  const refused: string[] = [];
  let draft = site;
  let done = 0;
  for (const change of changes.filter((one) => one.cannot === null)) {
    const box = plan.boxes.find((one) => one.post === change.post)!;
    const answer = apply(standing(draft, box), box, change.kind, trail);
    if ('refused' in answer) refused.push(`${change.sentence} ${answer.refused}`);
    else {
      draft = answer.site;
      done++;
    }
  }
  if (done === 0) return { edit: { refused: refused[0] ?? 'Nothing is chosen to be changed.' }, refused };
  const date = `${year}${site.settings.date.slice(4)}`.replace(/-02-29$/, '-02-28');
  const { readFrom: _, ...rest } = draft;
  const dated: Site = { ...rest, settings: { ...draft.settings, date } };
  const boxes = done === 1 ? '1 change' : `${done} changes`;
  return { edit: { site: dated, sentence: `Drafted the plan of ${year}: ${boxes}` }, refused };
}

/** A suggested post that stood becomes a post of the file, under its own id: its visits stay with it. */
function standing(site: Site, box: PlannedBox): Site {
  if (site.features.some((feature) => feature.id === box.post)) return site;
  const feature: SiteFeature = {
    id: box.post,
    kind: 'post',
    geometry: { type: 'Point', coordinates: [...box.position] },
    properties: { kind: 'post', state: 'candidate', bird: box.bird },
  };
  const answer = settle(site, [feature], 'Added a post');
  return 'refused' in answer ? site : answer.site;
}

const kept = (box: PlannedBox) => ({
  state: 'fixed' as const,
  bird: box.bird,
  facing: Math.round(box.card.facing.used) % 360,
});

function apply(site: Site, box: PlannedBox, kind: AdviceKind, trail: TrailReview): Edit {
  if (kind === 'retire') return setPost(site, box.post, { state: 'retired' });
  if (kind === 'move') return move(site, box, trail);
  const stays = setPost(site, box.post, kept(box));
  if ('refused' in stays || kind === 'keep') return stays;
  if (kind === 're-face') return setPost(stays.site, box.post, { facing: Math.round(box.card.facing.best) % 360 });
  if (kind === 'guard') return noted(stays.site, box.post, 'guard to be put up');
  return pair(stays.site, box, trail);
}

/** A few steps away it is still the same box; at another post the old one is retired, so that its visits stay with the old place. */
function move(site: Site, box: PlannedBox, { moves }: TrailReview): Edit {
  const spot = moves[box.post]!;
  if (spot.how === 'steps') {
    const moved = movePost(site, box.post, spot.position);
    return 'refused' in moved ? moved : setPost(moved.site, box.post, { ...kept(box), facing: null });
  }
  const retired = setPost(site, box.post, { state: 'retired' });
  if ('refused' in retired) return retired;
  const there = standing(retired.site, { ...box, post: spot.post!, position: spot.position });
  return setPost(there, spot.post!, { state: 'fixed', bird: box.bird });
}

function pair(site: Site, box: PlannedBox, { pairs }: TrailReview): Edit {
  const id = freeIds(site).free('post');
  const added = settle(
    site,
    [
      {
        id,
        kind: 'post',
        geometry: { type: 'Point', coordinates: [...pairs[box.post]!.position] },
        properties: { kind: 'post', state: 'fixed', bird: box.bird },
      },
    ],
    'Added a post',
  );
  return 'refused' in added ? added : setPost(added.site, box.post, { pair: id });
}

/** A word for the person, added to the post's note once. */
function noted(site: Site, id: string, word: string): Edit {
  const note = site.features.find((feature) => feature.id === id)?.properties.note;
  const old = typeof note === 'string' ? note : '';
  if (old.includes(word)) return { site, sentence: 'Noted' };
  return setProperty(site, [id], 'note', old ? `${old}; ${word}` : word);
}
