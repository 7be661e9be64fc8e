/** The clues of nest and eggs, for the visit and for the key alike. */
import { html } from 'lit';
import {
  cups,
  type EggColor,
  type EggPattern,
  type EggSize,
  eggColors,
  eggPatterns,
  eggSizes,
  type Material,
  materials,
} from '../../../visits/visit.ts';
import { toggled, type VisitDraft } from '../../field/visit-draft.ts';
import type { Words } from '../../words/en.ts';
import { eggDrawings, materialDrawings } from '../place-round/drawings.ts';
import './clue-choices.ts';

type Change = (change: Partial<VisitDraft>) => void;

/** Once more on the same word takes it out. */
const once = <T>(before: T | null, word: T): T | null => (before === word ? null : word);

export function nestClues(draft: VisitDraft, { round }: Words, change: Change) {
  const { visit, clue } = round;
  const list = (word: string | null) => (word === null ? [] : [word]);
  return html`<mp-clue-choices
      .label=${visit.material}
      .options=${materials}
      .chosen=${draft.material}
      .words=${clue}
      .drawings=${materialDrawings}
      @mp-choose=${(e: CustomEvent<Material>) => change({ material: toggled(draft.material, e.detail) })}
    ></mp-clue-choices>
    <mp-clue-choices
      .label=${visit.cup}
      .options=${cups}
      .chosen=${list(draft.cup)}
      .words=${clue}
      @mp-choose=${(e: CustomEvent<(typeof cups)[number]>) => change({ cup: once(draft.cup, e.detail) })}
    ></mp-clue-choices>
    <mp-clue-choices
      .label=${visit.eggColor}
      .options=${eggColors}
      .chosen=${list(draft.eggColor)}
      .words=${clue}
      @mp-choose=${(e: CustomEvent<EggColor>) => change({ eggColor: once(draft.eggColor, e.detail) })}
    ></mp-clue-choices>
    <mp-clue-choices
      .label=${visit.eggPattern}
      .options=${eggPatterns}
      .chosen=${list(draft.eggPattern)}
      .words=${clue}
      .drawings=${eggDrawings}
      @mp-choose=${(e: CustomEvent<EggPattern>) => change({ eggPattern: once(draft.eggPattern, e.detail) })}
    ></mp-clue-choices>
    <mp-clue-choices
      .label=${visit.eggSize}
      .options=${eggSizes}
      .chosen=${list(draft.eggSize)}
      .words=${clue}
      @mp-choose=${(e: CustomEvent<EggSize>) => change({ eggSize: once(draft.eggSize, e.detail) })}
    ></mp-clue-choices>`;
}
