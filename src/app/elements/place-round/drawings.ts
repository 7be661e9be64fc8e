/** Our own small drawings of what is in a box: line drawings in the ink of their word, always beside it. */
import { svg, type TemplateResult } from 'lit';
import type { EggPattern, Material, VisitState } from '../../../visits/visit.ts';

const picture = (inside: TemplateResult): TemplateResult =>
  svg`<svg viewBox="0 0 28 28" width="26" height="26" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="1.9" stroke-linecap="round" stroke-linejoin="round">${inside}</svg>`;

const bowl = svg`<path d="M3.5 15 C5 22.5 23 22.5 24.5 15 M3.5 15 C8 18 20 18 24.5 15"></path>`;

/** State → drawing; `unsure` beside them. */
export const stateDrawings: Readonly<Record<VisitState | 'unsure', TemplateResult>> = {
  empty: picture(svg`<path d="M7 24 V8 L14 4 L21 8 V24 Z M14 24 V28"></path><circle cx="14" cy="13" r="3"></circle>`),
  building: picture(
    svg`${bowl}<path d="M7 18 L12 21 M13 18.5 L18 21 M21 17.5 L16 21 M2.5 13 L6 14.5 M25.5 13 L22 14.5"></path>`,
  ),
  eggs: picture(
    svg`${bowl}<path d="M6.5 14 C6.5 8.5 12 8.5 12 14.5 M11 13 C11 6.5 17 6.5 17 13 M16 14.5 C16 8.5 21.5 8.5 21.5 14"></path>`,
  ),
  young: picture(
    svg`${bowl}<path d="M6 14.5 L8.5 7 L11 14.5 M11.5 14.5 L14 4.5 L16.5 14.5 M17 14.5 L19.5 7 L22 14.5 M7.6 9.7 L9.4 9.7 M13 8 L15 8 M18.6 9.7 L20.4 9.7"></path>`,
  ),
  fledged: picture(
    svg`<path d="M3 17 C8 18 10 14 12 11 C14 7 18 6.5 19.5 9 L24 10 L20 12 C19.5 17 14 20 9 19.5 L3 22 Z M12 12 C14 14.5 16 15 18 14"></path>`,
  ),
  failed: picture(svg`${bowl}<path d="M9 7 L19 13 M19 7 L9 13"></path>`),
  'other-user': picture(
    svg`<path d="M7 24 V8 L14 4 L21 8 V24 Z"></path><circle cx="14" cy="12" r="2.6"></circle><path d="M10 18 L18 18 M10.5 21 L17.5 21"></path>`,
  ),
  unsure: picture(svg`<path d="M4 9 H9 L11 6 H17 L19 9 H24 V22 H4 Z"></path><circle cx="14" cy="15" r="4.2"></circle>`),
};

const strand = (d: string): TemplateResult => picture(svg`<path d=${d}></path>`);

/** Nest materials worth a drawing; the others are told by their word. */
export const materialDrawings: Readonly<Partial<Record<Material, TemplateResult>>> = {
  grass: strand('M4 22 C9 12 10 8 9 4 M10 23 C13 14 15 10 14 5 M16 23 C18 15 21 11 23 8 M4 17 C10 16 18 19 24 15'),
  'pine-needles': strand('M14 24 L14 14 M14 14 L6 5 M14 14 L10 4 M14 14 L14 3 M14 14 L18 4 M14 14 L22 5'),
  feathers: strand('M6 23 C8 12 14 5 22 4 C22 12 16 18 8 20 M9 17 L17 9 M12 18 L19 12'),
  twigs: strand('M3 20 L25 8 M5 9 L23 21 M14 4 L12 24 M18 12 L22 6 M8 15 L4 13'),
  moss: strand('M4 20 C4 14 8 14 9 17 C10 11 15 11 16 16 C18 12 23 14 24 20 Z M8 20 V22 M14 20 V23 M20 20 V22'),
  hair: strand('M4 8 C12 4 16 14 24 10 M4 14 C12 10 16 20 24 16 M4 20 C12 16 16 26 24 22'),
  leaves: strand('M5 22 C4 12 12 5 22 5 C23 15 16 22 6 21 M5 23 L17 10 M11 16 L11 11 M13 14 L18 14'),
  bark: strand('M6 5 L12 4 L13 23 L7 24 Z M15 6 L22 5 L21 21 L16 23 Z M9 9 L9 17 M18 10 L18 17'),
  mud: strand('M3 19 C5 13 9 17 12 14 C16 10 20 15 25 18 C24 23 5 23 3 19 Z M9 18 L10 18 M15 17 L16 17 M19 20 L20 20'),
  litter: strand('M5 8 L12 6 L14 13 L7 15 Z M15 16 C19 12 23 14 23 18 C22 23 16 22 15 16 Z M5 20 L11 22 M17 5 L23 9'),
  'snake-skin': strand('M3 20 C8 12 12 24 16 16 C19 10 22 10 25 6 M7 16 L9 19 M12 20 L14 17 M17 15 L20 15'),
};

/** Egg markings on one egg. */
const egg = (inside: TemplateResult): TemplateResult =>
  picture(
    svg`<path d="M14 3 C20 3 22 12 22 16 C22 21.5 18 25 14 25 C10 25 6 21.5 6 16 C6 12 8 3 14 3 Z"></path>${inside}`,
  );

const dots = (places: readonly (readonly [number, number])[], radius: number): TemplateResult =>
  svg`${places.map(([x, y]) => svg`<circle cx=${x} cy=${y} r=${radius} fill="currentColor" stroke="none"></circle>`)}`;

const some: readonly (readonly [number, number])[] = [
  [11, 10],
  [16, 8],
  [14, 14],
  [18, 15],
  [10, 17],
  [15, 20],
];

export const eggDrawings: Readonly<Record<EggPattern, TemplateResult>> = {
  plain: egg(svg``),
  'fine-speckles': egg(
    dots([...some, [12, 13], [17, 12], [12, 21], [18, 19], [14, 17], [9, 14], [13, 7], [16, 17]], 0.9),
  ),
  spots: egg(dots(some, 1.7)),
  blotches: egg(
    dots(
      [
        [11, 11],
        [16.5, 9],
        [15, 18],
        [10.5, 18],
      ],
      2.8,
    ),
  ),
  streaks: egg(
    svg`<path d="M10 9 L12 14 M15 7 L14 12 M18 11 L16 17 M11 16 L12 21 M15 18 L14 22" stroke-width="1.5"></path>`,
  ),
};
