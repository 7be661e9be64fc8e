/** A plan as plain lines. */
import { birdById } from '../birds/index.ts';
import { lengthText } from '../criteria/units.ts';
import type { Plan } from '../plan-types.ts';
import type { Units } from '../site/types.ts';
import { counted } from './counted.ts';

export function planLines(plan: Plan, units: Units): string[] {
  const pairs = plan.boxes.length - plan.sites;
  const left = `  ${counted(plan.leftOut.length, 'post')} left out: ${counts(plan)}`;
  if (plan.boxes.length === 0) return [`${plan.siteName}: no post could be chosen`, left];
  return [
    `${plan.siteName}: ${counted(plan.boxes.length, 'box', 'boxes')} at ${counted(plan.sites, 'site')}${pairs ? `, ${pairs} of them ${pairs === 1 ? 'a pair' : 'pairs'}` : ''}`,
    `  ${plan.proof.sentence}`,
    ...plan.rounds.map(
      (r) =>
        `  Round ${r.walker}: ${counted(r.boxes.length, 'box', 'boxes')}, ${lengthText(r.metres, units)}, about ${counted(Math.round(r.minutes), 'minute')} with the boxes`,
    ),
    ...surenessLines(plan),
    '  box  score  stays  judged  undrawn  bird                     facing   post',
    ...plan.boxes.map((box) => {
      const bird = birdById(box.bird).name.padEnd(24);
      const facing = `${String(Math.round(box.card.facing.used)).padStart(3)}° ${box.card.facing.word}`;
      const notes = [
        box.state === 'standing' ? 'standing' : box.locked ? 'locked' : '',
        box.pairedWith ? `pair with ${box.pairedWith}` : '',
      ].filter(Boolean);
      return `  ${String(box.number).padStart(3)}  ${String(Math.round(box.card.score)).padStart(5)}  ${share(box.sureness)}  ${share(box.card.judged, 6)}  ${share(box.card.unmapped, 7)}  ${bird} ${facing.padEnd(8)} ${box.post}${notes.length ? ` (${notes.join(', ')})` : ''}`;
    }),
    left,
  ];
}

/** A share as a column: of the draws in which the box stays chosen, of the weights judged, of the ground not drawn. */
function share(of: number | null, width = 5): string {
  return (of === null ? '–' : `${Math.round(of * 100)} %`).padStart(width);
}

function surenessLines({ sureness }: Plan): string[] {
  if (!sureness) return [];
  const most = sureness.matters.map((m) => `${m.criterion} (${counted(m.changed, 'box', 'boxes')})`).join(', ');
  return [
    `  Tried under ${sureness.draws} draws of other weights; those that matter most here: ${most || 'none moves a box'}`,
  ];
}

function counts(plan: Plan): string {
  const by = new Map<string, number>();
  for (const { code } of plan.leftOut) by.set(code, (by.get(code) ?? 0) + 1);
  return [...by].map(([code, count]) => `${count} ${code.replaceAll('-', ' ')}`).join(', ') || 'none';
}
