/** Age of the young by their look: four rough stages as earliest and latest day. Rows of data; source: from memory, ours – small songbirds differ by days. */
import { html } from 'lit';
import type { VisitDraft } from '../../field/visit-draft.ts';
import type { Words } from '../../words/en.ts';

export const ageStages = [
  { id: 'hatchling', age: [0, 3] },
  { id: 'quills', age: [4, 7] },
  { id: 'opening', age: [8, 11] },
  { id: 'full', age: [12, 18] },
] as const;

export function ageChoices(draft: VisitDraft, { round }: Words, change: (change: Partial<VisitDraft>) => void) {
  const { visit } = round;
  const chosen = (age: readonly [number, number]) => draft.age?.[0] === age[0] && draft.age[1] === age[1];
  return html`<section>
    <h2>${visit.age}</h2>
    <div class="choices" role="group" aria-label=${visit.age}>
      ${ageStages.map(
        ({ id, age }) =>
          html`<button aria-pressed=${chosen(age)} @click=${() => change({ age: chosen(age) ? null : age })}>
            <span>${visit.ageWords[id]}<br /><span class="small">${visit.ageDays(age[0], age[1])}</span></span>
          </button>`,
      )}
    </div>
    <p class="small">${visit.ageRough}</p>
  </section>`;
}
