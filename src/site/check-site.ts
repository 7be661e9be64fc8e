/** Checks that need the whole site: where it lies, what refers to what, what is hidden, what is missing. */
import { limits } from './defaults.ts';
import { hiddenAreas } from './hidden-areas.ts';
import { placeWords, trouble } from './issues.ts';
import { label } from './label.ts';
import { type Box, boxOf, featurePositions, firstPlace } from './positions.ts';
import { postNumber, postPair, postState } from './properties.ts';
import type { Issue, LonLat, SiteFeature, SiteSettings } from './types.ts';

function middle(values: number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor((values.length - 1) / 2)] ?? 0;
}

/** Features that lie more than 1 degree from the middle (median) of the rest: a stray position, not a part of the site. */
export function strayFeatures(features: readonly SiteFeature[]): Map<SiteFeature, Issue> {
  const boxes = features.map((feature) => boxOf(featurePositions(feature)));
  const drawn = boxes.filter((box) => box !== null);
  const centre: LonLat = [
    middle(drawn.map((box) => (box[0] + box[2]) / 2)),
    middle(drawn.map((box) => (box[1] + box[3]) / 2)),
  ];
  const far = (box: Box) =>
    Math.max(centre[0] - box[0], box[2] - centre[0], centre[1] - box[1], box[3] - centre[1]) > limits.span;
  const stray = features.filter((_, i) => boxes[i] && far(boxes[i]));
  return new Map(stray.length * 2 < drawn.length ? stray.map((feature) => [feature, strayIssue(feature, centre)]) : []);
}

function strayIssue(feature: SiteFeature, centre: LonLat): Issue {
  const place = firstPlace(feature);
  const sentence = `${label(feature)} at ${placeWords(place ?? centre)} lies far from everything else (around ${placeWords(centre)}).`;
  const fix = 'Correct its position, or move it to a site file of its own.';
  return trouble('far-from-the-rest', { feature: feature.id, place }, sentence, fix);
}

/** The site as a whole is too wide to be measured on one flat frame. */
export function tooWide(features: readonly SiteFeature[], fileName: string): Issue | null {
  const box = boxOf(features.flatMap(featurePositions));
  if (!box) return null;
  const span = Math.max(box[2] - box[0], box[3] - box[1]);
  if (span <= limits.span) return null;
  const sentence = `What is drawn in ${fileName} spans ${span.toFixed(1)} degrees; a site may span ${limits.span}.`;
  return trouble('site-too-wide', { place: [box[0], box[1]] }, sentence, 'Cut it into several site files.');
}

/** Everything else that is noticed once all features are read. */
export function checkSite(features: readonly SiteFeature[], settings: SiteSettings, kept: number): Issue[] {
  return [
    ...swappedTrouble(features),
    ...pairTrouble(features),
    ...numberTrouble(features),
    ...hiddenAreas(features),
    ...startTrouble(features, settings),
    ...missing(features, kept),
  ];
}

/** Antarctica and the high Arctic have no nest boxes, but swapped pairs of North America land there. */
function swappedTrouble(features: readonly SiteFeature[]): Issue[] {
  const first = features.map(firstPlace).find((place) => place !== null);
  if (!first || (first[1] > -60 && first[1] < 75)) return [];
  const swapped = Math.abs(first[0]) < 75 ? `, where ${placeWords([first[1], first[0]])} may be meant` : '';
  const sentence = `The site lies at ${placeWords(first)}${swapped}: no nest boxes stand there.`;
  return [
    trouble(
      'looks-swapped',
      { place: first },
      sentence,
      'Look whether latitude and longitude are swapped: longitude comes first.',
    ),
  ];
}

function pairTrouble(features: readonly SiteFeature[]): Issue[] {
  const posts = new Set(features.filter(({ kind }) => kind === 'post').map(({ id }) => id));
  return features.flatMap((feature) => {
    const pair = feature.kind === 'post' ? postPair(feature) : null;
    if (pair === null || (posts.has(pair) && pair !== feature.id)) return [];
    const what = pair === feature.id ? 'itself' : `“${pair.slice(0, 60)}”, which is not there`;
    const sentence = `${label(feature)} is paired with ${what}; it is judged as a single.`;
    const where = { feature: feature.id, place: firstPlace(feature) };
    return [trouble('pair-unknown', where, sentence, 'Pair it with a post of this site, or take the pair away.')];
  });
}

function numberTrouble(features: readonly SiteFeature[]): Issue[] {
  const seen = new Map<number, SiteFeature>();
  return features.flatMap((feature) => {
    const number = feature.kind === 'post' && postState(feature) === 'fixed' ? postNumber(feature) : null;
    if (number === null) return [];
    const other = seen.get(number);
    seen.set(number, other ?? feature);
    if (!other) return [];
    const sentence = `${label(feature)} and ${label(other)} both have the number ${number}.`;
    const where = { feature: feature.id, place: firstPlace(feature) };
    return [trouble('number-twice', where, sentence, 'Give one of them another number.')];
  });
}

function startTrouble(features: readonly SiteFeature[], { start }: SiteSettings): Issue[] {
  if (start === null || features.some(({ id, kind }) => id === start && kind === 'trailhead')) return [];
  const sentence = `The round is to start at “${start.slice(0, 60)}”, which is no trailhead of this site; the first one is used.`;
  return [trouble('start-unknown', {}, sentence, 'Choose one of the trailheads.')];
}

function missing(features: readonly SiteFeature[], kept: number): Issue[] {
  if (features.length === 0 && kept > 0) {
    const sentence = `None of what the file holds (${kept}) can be used yet.`;
    return [trouble('nothing-drawn', {}, sentence, 'Mend the features named above.')];
  }
  if (features.length === 0) {
    const fix = 'Draw the land and the posts, or import them.';
    return [trouble('nothing-drawn', {}, 'Nothing is drawn on this site yet.', fix)];
  }
  const has = (...kinds: string[]) => features.some(({ kind, geometry }) => geometry && kinds.includes(kind));
  const notes: Issue[] = [];
  if (!has('woods', 'tree', 'brush', 'hedge')) {
    const sentence = 'No woods are drawn, nor trees, brush or hedges: distances to them cannot be judged.';
    notes.push(trouble('no-woods', {}, sentence, 'Draw them, even those beyond the fence.'));
  }
  if (!has('post')) notes.push(trouble('no-posts', {}, 'No post is drawn.', 'Add posts, or ask for suggestions.'));
  return notes;
}
