/** Birds wanted: one row a bird of the region, with how many sites and whether two boxes stand together. */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { BirdGuide } from '../../../birds/guide.ts';
import { birdGuides } from '../../../birds/index.ts';
import { setSetting } from '../../../edits/set-setting.ts';
import type { Wanted } from '../../../site/types.ts';
import { change } from '../../actions/land-state.ts';
import { birdName } from '../../bird-name.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';

@customElement('mp-land-wanted')
export class LandWanted extends StoreElement {
  static override styles = [
    shared,
    landStyle,
    css`
      .bird {
        display: grid;
        grid-template-columns: 1fr 84px;
        gap: 2px 10px;
        align-items: center;
        padding: 6px 0;
        border-bottom: 1px solid var(--ring);
      }
      .bird label.switch {
        grid-column: 1 / -1;
      }
    `,
  ];

  @state() private trouble: string | null = null;

  protected override watches() {
    return ['words', 'site'] as const;
  }

  protected override render() {
    const { site } = this.state;
    if (!site) return null;
    const { settings } = this.words.land;
    const { wanted, region } = site.settings;
    const others = birdGuides.filter(
      (bird) => !bird.pest && bird.regions.some((r) => r === region) && !wanted.some((w) => w.bird === bird.id),
    );
    return html`<section>
      <h2>${settings.wanted}</h2>
      ${wanted.length === 0 ? html`<p>${settings.noWanted}</p>` : null}
      ${wanted.map((row) => this.#row(row))}
      ${this.trouble ? html`<p class="wash" role="alert">${this.trouble}</p>` : null}
      <label
        ><span>${settings.addBird}</span
        ><select data-add @change=${this.#add}>
          <option value="">${settings.chooseBird}</option>
          ${others.map((bird: BirdGuide) => html`<option value=${bird.id}>${bird.name}</option>`)}
        </select></label
      >
    </section>`;
  }

  #row(row: Wanted) {
    const { settings } = this.words.land;
    const pairs = birdGuides.find((bird) => bird.id === row.bird)?.spacing.pairs ?? false;
    return html`<div class="bird" data-bird=${row.bird}>
      <span>${birdName(row.bird)}</span>
      <input
        type="number"
        min="0"
        max="500"
        aria-label=${settings.sitesOf(birdName(row.bird))}
        .value=${String(row.sites)}
        @change=${({ target }: Event) => this.#count(row, (target as HTMLInputElement).value)}
      />
      ${
        pairs || row.paired
          ? html`<label class="switch"
              ><input type="checkbox" .checked=${row.paired === true} @change=${({ target }: Event) => this.#pair(row, (target as HTMLInputElement).checked)} />${settings.paired}</label
            >`
          : null
      }
    </div>`;
  }

  /** None of a bird takes its row away. */
  #count(row: Wanted, text: string): void {
    const sites = Number(text);
    if (text.trim() === '' || !Number.isInteger(sites) || sites < 0) {
      this.trouble = this.words.land.notNumber(text);
      return;
    }
    const rows = this.state.site!.settings.wanted;
    this.#set(
      sites === 0 ? rows.filter((one) => one !== row) : rows.map((one) => (one === row ? { ...row, sites } : one)),
    );
  }

  #pair(row: Wanted, paired: boolean): void {
    const { paired: _old, ...rest } = row;
    this.#set(
      this.state.site!.settings.wanted.map((one) => (one === row ? { ...rest, ...(paired ? { paired } : {}) } : one)),
    );
  }

  #add({ target }: Event): void {
    const bird = (target as HTMLSelectElement).value;
    (target as HTMLSelectElement).value = '';
    if (bird) this.#set([...this.state.site!.settings.wanted, { bird, sites: 1 }]);
  }

  #set(wanted: readonly Wanted[]): void {
    const { site } = this.state;
    if (!site) return;
    const answer = setSetting(site, 'wanted', wanted);
    this.trouble = 'refused' in answer ? answer.refused : null;
    if (!('refused' in answer)) change(this.store, answer);
  }
}
