/** What is known of the chosen thing: a field for every property its kind has, lengths in the site's unit. */
import { html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { birdGuides } from '../../../birds/index.ts';
import { setPost } from '../../../edits/set-post.ts';
import { setProperty } from '../../../edits/set-property.ts';
import { defaultHeights } from '../../../site/defaults.ts';
import { label } from '../../../site/label.ts';
import { hasProperty, type PropertyName, propertyRows } from '../../../site/property-table.ts';
import type { SiteFeature } from '../../../site/types.ts';
import { change } from '../../actions/land-state.ts';
import { length } from '../../format.ts';
import { shownLength, typedLength } from '../../length-input.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';

const names = Object.keys(propertyRows) as PropertyName[];
const postNames: readonly string[] = ['state', 'bird', 'number', 'facing', 'holeHeight', 'pair'];

@customElement('mp-land-properties')
export class LandProperties extends StoreElement {
  static override styles = [shared, landStyle];
  @property({ attribute: false }) feature!: SiteFeature;

  /** The field whose last text could not be read, with the reason. */
  @state() private refused: { name: string; why: string } | null = null;

  protected override watches() {
    return ['words', 'units', 'site'] as const;
  }

  protected override render() {
    const { feature } = this;
    return names.filter((name) => hasProperty(feature.kind, name)).map((name) => this.#field(name));
  }

  #field(name: PropertyName) {
    const word = this.#word(name);
    const row = propertyRows[name];
    if (row.type === 'yes-no') return this.#tick(name, word);
    return html`<label><span>${word}</span>${this.#input(name)}</label>${this.#below(name)}`;
  }

  #word(name: PropertyName): string {
    const { land } = this.words;
    return name === 'name' ? land.name : (land.properties[name] ?? name);
  }

  #tick(name: PropertyName, word: string) {
    const fallback = propertyRows[name].otherwise === 'true';
    const value = this.feature.properties[name];
    const on = typeof value === 'boolean' ? value : fallback;
    return html`<label class="switch"
      ><input type="checkbox" data-field=${name} .checked=${on} @change=${({ target }: Event) => {
        const { checked } = target as HTMLInputElement;
        this.#set(name, checked === fallback ? undefined : checked);
      }} />${word}</label
    >`;
  }

  #input(name: PropertyName) {
    const { type, unit } = propertyRows[name];
    if (name === 'state') return this.#choice(name, Object.entries(this.words.land.states));
    if (name === 'bird') return this.#choice(name, [['', this.words.land.anyBird], ...this.#birds()]);
    if (name === 'pair') return this.#choice(name, [['', this.words.land.noPair], ...this.#posts()]);
    const value = this.feature.properties[name];
    if (type === 'number' && unit === 'm') return this.#length(name, value);
    return html`<input
      data-field=${name}
      .value=${value === undefined || value === null ? '' : String(value)}
      inputmode=${type === 'text' ? 'text' : 'decimal'}
      @change=${({ target }: Event) => this.#typed(name, (target as HTMLInputElement).value)}
    />`;
  }

  #length(name: PropertyName, value: unknown) {
    const { units } = this.state;
    return html`<span class="unit"
      ><input
        data-field=${name}
        inputmode="decimal"
        .value=${typeof value === 'number' ? String(shownLength(value, units)) : ''}
        @change=${({ target }: Event) => this.#typed(name, (target as HTMLInputElement).value)}
      />${this.words.land.unit[units]}</span
    >`;
  }

  #choice(name: PropertyName, options: readonly (readonly [string, string])[]) {
    const now = String(this.feature.properties[name] ?? (name === 'state' ? 'candidate' : ''));
    return html`<select data-field=${name} @change=${({ target }: Event) => this.#typed(name, (target as HTMLSelectElement).value)}>
      ${options.map(([value, word]) => html`<option value=${value} ?selected=${value === now}>${word}</option>`)}
    </select>`;
  }

  #birds(): [string, string][] {
    const region = this.state.site?.settings.region;
    const now = this.feature.properties.bird;
    return birdGuides
      .filter((bird) => bird.id === now || (!bird.pest && bird.regions.some((one) => one === region)))
      .map(({ id, name }) => [id, name]);
  }

  #posts(): [string, string][] {
    const others = this.state.site?.features.filter((f) => f.kind === 'post' && f.id !== this.feature.id) ?? [];
    return others.map((post) => [post.id, label(post)]);
  }

  #below(name: PropertyName) {
    const { land } = this.words;
    if (this.refused?.name === name) return html`<p class="wash" role="alert">${this.refused.why}</p>`;
    const { otherwise } = propertyRows[name];
    if (name === 'name' || name === 'state' || name === 'bird' || name === 'pair') return null;
    const height = name === 'height' ? (defaultHeights[this.feature.kind]?.value ?? null) : null;
    return html`<p class="small">${land.otherwise(height === null ? otherwise : length(height, this.state.units))}</p>`;
  }

  #typed(name: PropertyName, text: string): void {
    const { type, unit } = propertyRows[name];
    const plain = text.trim();
    if (plain === '') {
      this.#set(name, undefined);
      return;
    }
    const isLength = type === 'number' && unit === 'm';
    const value = isLength
      ? typedLength(plain, this.state.units)
      : type === 'number' || type === 'whole'
        ? number(plain)
        : plain;
    if (value === null) this.refused = { name, why: this.words.land.notNumber(plain) };
    else this.#set(name, typeof value === 'number' ? Math.round(value * 1000) / 1000 : value);
  }

  #set(name: PropertyName, value: unknown): void {
    const { site } = this.state;
    if (!site) return;
    const { id } = this.feature;
    const answer = postNames.includes(name)
      ? setPost(site, id, { [name]: value ?? (name === 'state' ? 'candidate' : null) })
      : setProperty(site, [id], name, value);
    this.refused = 'refused' in answer ? { name, why: answer.refused } : null;
    if (!('refused' in answer)) change(this.store, answer);
    else this.requestUpdate();
  }
}

function number(text: string): number | null {
  return /^[-+]?\d+([.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : null;
}
