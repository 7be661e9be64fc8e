/** What is printed and how: sheets, paper, look, scale, whose round. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Plan } from '../../../plan-types.ts';
import { detailScales } from '../../../print/book.ts';
import { type SheetName, type SheetOptions, sheetNames } from '../../../print/input.ts';
import { choosePaper } from '../../actions/paper-draw.ts';
import type { PaperChoice } from '../../paper/paper-state.ts';
import { sheetOptions } from '../../paper/sheet-options.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { paperChoicesStyle } from './paper-choices-style.ts';

const papers = ['letter', 'a4'] as const;
const orientations = ['landscape', 'portrait'] as const;
const variants = ['standard', 'ink-saver', 'large-print'] as const;
const cardCounts = [4, 2] as const;

@customElement('mp-paper-choices')
export class PaperChoices extends StoreElement {
  static override styles = [shared, paperChoicesStyle];

  protected override watches() {
    return ['paper', 'plan', 'planOf', 'words'] as const;
  }

  protected override render() {
    const { plan, planOf, paper } = this.state;
    if (!plan || !planOf) return null;
    const { choice } = paper;
    const options = sheetOptions(choice, plan, planOf.settings.units);
    const words = this.words.paper;
    const large = choice.variant === 'large-print';
    return html`${this.#sheets(options)} ${plan.rounds.length > 1 ? this.#rounds(plan, choice) : null}
      <div class="two">
        ${this.#segments(words.paper.label, 'paper', papers, options.paper, (one) => words.paper[one])}
        ${this.#segments(words.orientation.label, 'orientation', orientations, choice.orientation, (one) => words.orientation[one])}
      </div>
      ${this.#segments(words.variant.label, 'variant', variants, choice.variant, (one) => words.variant[one])}
      <p class="small note">${words.variantNote[choice.variant]}</p>
      ${options.sheets.includes('details') ? this.#scale(options) : null}
      ${
        options.sheets.includes('cards') && !large
          ? this.#segments(words.cards, 'cardsPerPage', cardCounts, choice.cardsPerPage, String)
          : null
      }`;
  }

  #sheets({ sheets }: SheetOptions) {
    const { paper } = this.words;
    return html`<fieldset>
      <legend>${paper.what}</legend>
      ${sheetNames.map((name) => {
        const count = this.state.paper.drawn?.sheets.filter((sheet) => sheet.name === name).length ?? 0;
        const on = sheets.includes(name);
        return html`<label class="tick">
          <input type="checkbox" .checked=${on} @change=${() => this.#toggle(sheets, name)} />
          <span>${paper.sheets[name]}</span>
          <span class="small">${on && count > 0 ? paper.pages(count) : ''}</span>
        </label>`;
      })}
    </fieldset>`;
  }

  #toggle(sheets: readonly SheetName[], name: SheetName): void {
    const on = sheets.includes(name);
    choosePaper(this.store, { sheets: sheetNames.filter((one) => (one === name ? !on : sheets.includes(one))) });
  }

  #rounds({ rounds }: Plan, { walker }: PaperChoice) {
    const { paper } = this.words;
    return html`<label class="row"
      ><span>${paper.round}</span>
      <select @change=${(event: Event) => choosePaper(this.store, { walker: numberOf(event) })}>
        <option value="" ?selected=${walker === null}>${paper.everyRound}</option>
        ${rounds.map(
          (round) =>
            html`<option value=${round.walker} ?selected=${walker === round.walker}>
              ${paper.walker(round.walker, round.boxes.length)}
            </option>`,
        )}
      </select></label
    >`;
  }

  #scale({ scale }: SheetOptions) {
    const { paper } = this.words;
    const { units } = this.state.planOf!.settings;
    const used = this.state.paper.drawn?.sheets.find((sheet) => sheet.name === 'details')?.scale ?? null;
    const auto = scale === null && used !== null ? paper.scaleOf(used, units) : null;
    return html`<label class="row"
      ><span>${paper.scale}</span>
      <select @change=${(event: Event) => choosePaper(this.store, { scale: numberOf(event) })}>
        <option value="" ?selected=${scale === null}>${paper.scaleAuto(auto)}</option>
        ${detailScales[units].map(
          (one) => html`<option value=${one} ?selected=${scale === one}>${paper.scaleOf(one, units)}</option>`,
        )}
      </select></label
    >`;
  }

  #segments<Key extends keyof PaperChoice, One extends string | number>(
    label: string,
    key: Key,
    list: readonly One[],
    chosen: unknown,
    words: (one: One) => string,
  ) {
    return html`<fieldset>
      <legend>${label}</legend>
      <div class="segments">
        ${list.map(
          (one) =>
            html`<label
              ><input
                type="radio"
                name=${key}
                value=${one}
                .checked=${one === chosen}
                @change=${() => choosePaper(this.store, { [key]: one })}
              />${words(one)}</label
            >`,
        )}
      </div>
    </fieldset>`;
  }
}

/** The chosen option's figure; null for the empty one. */
function numberOf(event: Event): number | null {
  const { value } = event.target as HTMLSelectElement;
  return value === '' ? null : Number(value);
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-paper-choices': PaperChoices;
  }
}
