/** What is set for the whole site: each field is one step of the history. */
import { html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { birdGuides } from '../../../birds/index.ts';
import { setSetting } from '../../../edits/set-setting.ts';
import type { Site, SiteSettings } from '../../../site/types.ts';
import { change } from '../../actions/land-state.ts';
import { shownLength, typedLength } from '../../length-input.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';
import './land-wanted.ts';

type Key = Exclude<keyof SiteSettings, 'fileVersion' | 'extra'>;

/** Eight winds are enough for where storms come from; degrees clockwise from north. */
const winds = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'];
const regions = [...new Set(birdGuides.flatMap((bird) => bird.regions))];

@customElement('mp-land-settings')
export class LandSettings extends StoreElement {
  static override styles = [shared, landStyle];

  @state() private refused: { readonly key: Key; readonly why: string } | null = null;

  protected override watches() {
    return ['words', 'site', 'units'] as const;
  }

  protected override render() {
    const { site } = this.state;
    if (!site) return null;
    const { settings } = this.words.land;
    const s = site.settings;
    return html`${this.#text('name', s.name)}
      ${this.#choice('units', s.units, Object.entries(settings.unitWords))}
      ${this.#choice('region', s.region, this.#regions(s.region))}
      <mp-land-wanted></mp-land-wanted>
      ${this.#choice('stormFrom', s.stormFrom === null ? '' : String(s.stormFrom), this.#storms(s.stormFrom), (v) => (v === '' ? null : Number(v)))}
      ${this.#number('julyMaximum', s.julyMaximum === null ? '' : this.#degrees(s.julyMaximum), this.state.units === 'us' ? '°F' : '°C', (n) => (this.state.units === 'us' ? Math.round(((n - 32) / 1.8) * 10) / 10 : n))}
      ${this.#choice('box', s.box, Object.entries(settings.boxes))} ${this.#date(s.date)}
      ${this.#number('walkers', String(s.walkers), '', (n) => n)} ${this.#number('minutesPerBox', String(s.minutesPerBox), 'min', (n) => n)}
      ${this.#lengthField('suggestGrid', s.suggestGrid)} ${this.#lengthField('reachOfPaths', s.reachOfPaths)}
      ${this.#number('minimumScore', String(s.minimumScore), '', (n) => n)} ${this.#lengthField('walkLimit', s.walkLimit)}`;
  }

  #field(key: Key, input: unknown) {
    const { settings } = this.words.land;
    const hint = settings.hints[key];
    return html`<label><span>${settings.names[key]}</span>${input}</label>
      ${this.refused?.key === key ? html`<p class="wash" role="alert">${this.refused.why}</p>` : hint ? html`<p class="small">${hint}</p>` : null}`;
  }

  #text(key: 'name', value: string) {
    return this.#field(
      key,
      html`<input data-setting=${key} .value=${value} @change=${({ target }: Event) => this.#set(key, (target as HTMLInputElement).value.trim())} />`,
    );
  }

  #date(value: string) {
    return this.#field(
      'date',
      html`<input type="date" data-setting="date" .value=${value} @change=${({ target }: Event) => this.#set('date', (target as HTMLInputElement).value)} />`,
    );
  }

  #choice(
    key: Key,
    value: string,
    options: readonly (readonly [string, string])[],
    read: (value: string) => unknown = (v) => v,
  ) {
    return this.#field(
      key,
      html`<select data-setting=${key} @change=${({ target }: Event) => this.#set(key, read((target as HTMLSelectElement).value))}>
        ${options.map(([id, word]) => html`<option value=${id} ?selected=${id === value}>${word}</option>`)}
      </select>`,
    );
  }

  #number(key: Key, shown: string, unit: string, toValue: (typed: number) => number) {
    const { words } = this;
    const read = (text: string) => {
      const plain = text.trim().replace(',', '.');
      if (plain === '') return this.#set(key, key === 'julyMaximum' ? null : undefined);
      if (!/^[-+]?\d+(\.\d+)?$/.test(plain)) this.refused = { key, why: words.land.notNumber(text) };
      else this.#set(key, toValue(Number(plain)));
    };
    return this.#field(
      key,
      html`<span class="unit"><input data-setting=${key} inputmode="decimal" .value=${shown} @change=${({ target }: Event) => read((target as HTMLInputElement).value)} />${unit}</span>`,
    );
  }

  #lengthField(key: 'suggestGrid' | 'reachOfPaths' | 'walkLimit', value: number | null) {
    const { units, words } = this.state;
    const read = (text: string) => {
      const metres = text.trim() === '' ? null : typedLength(text, units);
      if (metres === null && text.trim() !== '') this.refused = { key, why: words.land.notNumber(text) };
      else this.#set(key, metres === null ? null : Math.round(metres * 100) / 100);
    };
    return this.#field(
      key,
      html`<span class="unit"><input data-setting=${key} inputmode="decimal" .value=${value === null ? '' : String(shownLength(value, units))} @change=${({ target }: Event) => read((target as HTMLInputElement).value)} />${words.land.unit[units]}</span>`,
    );
  }

  #regions(now: string): [string, string][] {
    const { regionWords } = this.words.land.settings;
    const known = regions.map((region): [string, string] => [region, regionWords[region] ?? region]);
    return known.some(([id]) => id === now) ? known : [...known, [now, now]];
  }

  #storms(now: number | null): [string, string][] {
    const { settings } = this.words.land;
    const known = winds.map((wind, i): [string, string] => [String(i * 45), settings.windWords[wind] ?? wind]);
    const odd =
      now !== null && !known.some(([value]) => Number(value) === now % 360)
        ? [[String(now), `${now}°`] as [string, string]]
        : [];
    return [['', settings.notKnown], ...known, ...odd];
  }

  #degrees(celsius: number): string {
    return String(this.state.units === 'us' ? Math.round(celsius * 1.8 + 32) : celsius);
  }

  #set(key: Key, value: unknown): void {
    const { site } = this.state;
    if (!site || value === undefined) return void this.requestUpdate();
    const answer = setSetting(site, key, value as never);
    this.refused = 'refused' in answer ? { key, why: answer.refused } : null;
    if (!('refused' in answer) && !same(site, key, value)) change(this.store, answer);
  }
}

function same(site: Site, key: Key, value: unknown): boolean {
  return JSON.stringify(site.settings[key]) === JSON.stringify(value);
}
