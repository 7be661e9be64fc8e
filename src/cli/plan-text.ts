/** A plan as plain lines. */
import { birdById } from '../birds/index.ts';
import { lengthText } from '../criteria/units.ts';
import type { Plan } from '../plan-types.ts';
import type { Units } from '../site/types.ts';

export function planLines(plan: Plan, units: Units): string[] {
  const pairs = plan.boxes.length - plan.sites;
  return [
    `${plan.siteName}: ${plan.boxes.length} boxes at ${plan.sites} sites${pairs ? `, ${pairs} of them pairs` : ''}`,
    `  ${plan.proof.sentence}`,
    ...plan.rounds.map(
      (r) =>
        `  Round ${r.walker}: ${r.boxes.length} boxes, ${lengthText(r.metres, units)}, about ${Math.round(r.minutes)} minutes with the boxes`,
    ),
    ...surenessLines(plan),
    '  box  score  stays  bird                     facing   post',
    ...plan.boxes.map((box) => {
      const bird = birdById(box.bird).name.padEnd(24);
      const facing = `${String(Math.round(box.card.facing.used)).padStart(3)}° ${box.card.facing.word}`;
      const notes = [
        box.state === 'standing' ? 'standing' : '',
        box.pairedWith ? `pair with ${box.pairedWith}` : '',
      ].filter(Boolean);
      return `  ${String(box.number).padStart(3)}  ${String(Math.round(box.card.score)).padStart(5)}  ${stays(box.sureness)}  ${bird} ${facing.padEnd(8)} ${box.post}${notes.length ? ` (${notes.join(', ')})` : ''}`;
    }),
    `  ${plan.leftOut.length} posts left out: ${counts(plan)}`,
  ];
}

/** Share of the draws in which the box stays chosen. */
function stays(share: number | null): string {
  return (share === null ? '–' : `${Math.round(share * 100)} %`).padStart(5);
}

function surenessLines({ sureness }: Plan): string[] {
  if (!sureness) return [];
  const most = sureness.matters.map((m) => `${m.criterion} (${m.changed} boxes)`).join(', ');
  return [
    `  Tried under ${sureness.draws} draws of other weights; those that matter most here: ${most || 'none moves a box'}`,
  ];
}

function counts(plan: Plan): string {
  const by = new Map<string, number>();
  for (const { code } of plan.leftOut) by.set(code, (by.get(code) ?? 0) + 1);
  return [...by].map(([code, count]) => `${count} ${code.replaceAll('-', ' ')}`).join(', ') || 'none';
}
