/** A post's card as plain lines. */
import { birdById } from '../birds/index.ts';
import type { PostCard } from '../plan-types.ts';

export function cardLines(name: string, card: PostCard): string[] {
  const { sun, facing } = card;
  const titles = new Map(card.rows.map((row) => [row.id as string, row.title.toLowerCase()]));
  const weakest = card.weakest.map((id) => titles.get(id)).join(', then ');
  return [
    `${name}: ${birdById(card.bird).name}, ${Math.round(card.score)} of 100`,
    ...(card.refused.length ? card.refused.map((reason) => `  refused: ${reason}`) : []),
    ...(weakest ? [`  weakest: ${weakest}`] : []),
    ...card.rows.map((row) => {
      const score = row.score === null ? '  –' : String(Math.round(row.score * 100)).padStart(3);
      const sources = row.sources.length ? ` [${row.sources.join(', ')}]` : '';
      return `  ${score}  ${row.sentence}${sources}`;
    }),
    `  Sun: ${sun.sentence}`,
    ...sun.help.map((help) => `       ${help}`),
    `  ${facing.sentence}`,
    ...card.flags.map((flag) => `  Look at: ${flag}`),
    `  Could be judged: ${Math.round(card.judged * 100)} % of the weights; not drawn: ${Math.round(card.unmapped * 100)} % of the surroundings`,
    `  Who would live here: ${card.who
      .slice(0, 3)
      .map((w) => `${w.name} ${Math.round(w.score)} (hole ${w.hole})`)
      .join(', ')}`,
  ];
}
