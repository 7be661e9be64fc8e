/** What is to be chosen: birds and how many sites of each, the least score, and the grid of suggested places. Each change is one step back. */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { setSetting } from '../../../edits/set-setting.ts';
import type { Site, SiteSettings } from '../../../site/types.ts';
import { edit } from '../../actions/edit.ts';
import { openPage } from '../../actions/land-state.ts';
import { lockedPosts, unlockAll } from '../../actions/lock.ts';
import { replan } from '../../actions/plan.ts';
import { goTo } from '../../actions/select.ts';
import { shownLength, typedLength } from '../../length-input.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../land-settings/land-wanted.ts';
import { landStyle } from '../place-land/land-style.ts';
import '../round-settings/round-settings.ts';
import '../trade-off/trade-off.ts';

type Key = 'minimumScore' | 'suggestGrid' | 'reachOfPaths' | 'walkLimit';

@customElement('mp-posts-choose')
export class PostsChoose extends StoreElement {
  static override styles = [
    shared,
    landStyle,
    css`
      .again,
      .locked {
        margin-top: 8px;
      }
    `,
  ];

  @state() private refused: { readonly key: Key; readonly why: string } | null = null;

  protected override watches() {
    return ['site', 'words', 'units', 'engine', 'plan'] as const;
  }

  protected override render() {
    const { site, engine, plan } = this.state;
    if (!site) return null;
    const { posts, land } = this.words;
    const { minimumScore, suggestGrid, reachOfPaths, walkLimit } = site.settings;
    return html`<h1>${posts.chooseTitle}</h1>
      ${plan ? html`<p class="small">${plan.proof.sentence}</p>` : null}
      <button class="again filled" data-do="again" ?disabled=${engine.at === 'work'} @click=${() => replan(this.store)}>${posts.chooseAgain}</button>
      ${this.#locked(site)}
      <mp-land-wanted></mp-land-wanted>
      ${this.#field('minimumScore', String(minimumScore), posts.of100, (text) => Number(text.replace(',', '.')))}
      ${this.#length('suggestGrid', suggestGrid)} ${this.#length('reachOfPaths', reachOfPaths)}
      ${this.#length('walkLimit', walkLimit)}
      <section>
        <h2>${this.words.round.walkTitle}</h2>
        <mp-round-settings plan></mp-round-settings>
      </section>
      <mp-trade-off></mp-trade-off>
      <button class="text" @click=${() => this.#land()}>${land.pages.settings}</button>`;
  }

  #locked(site: Site) {
    const { posts } = this.words;
    const count = lockedPosts(site).length;
    if (count === 0) return null;
    return html`<p class="locked">${posts.lockedCount(count)}</p>
      <button data-do="unlock-all" @click=${() => unlockAll(this.store)}>${posts.unlockAll}</button>`;
  }

  #length(key: Key, value: number | null) {
    const { units, words } = this.state;
    const shown = value === null ? '' : String(shownLength(value, units));
    return this.#field(key, shown, words.land.unit[units], (text) =>
      text.trim() === '' ? null : (typedLength(text, units) ?? Number.NaN),
    );
  }

  #field(key: Key, shown: string, unit: string, read: (text: string) => number | null) {
    const { settings } = this.words.land;
    const take = ({ target }: Event) => this.#set(key, (target as HTMLInputElement).value, read);
    return html`<label
        ><span>${settings.names[key]}</span
        ><span class="unit"><input data-setting=${key} inputmode="decimal" .value=${shown} @change=${take} />${unit}</span></label
      >
      ${this.refused?.key === key ? html`<p class="wash" role="alert">${this.refused.why}</p>` : null}`;
  }

  #set(key: Key, text: string, read: (text: string) => number | null): void {
    const { site, words } = this.state;
    if (!site) return;
    const value = read(text);
    if (value !== null && !Number.isFinite(value)) {
      this.refused = { key, why: words.land.notNumber(text) };
      return;
    }
    const rounded = value === null ? null : Math.round(value * 100) / 100;
    const answer = setSetting(site, key, rounded as SiteSettings[Key]);
    this.refused = 'refused' in answer ? { key, why: answer.refused } : null;
    if (!('refused' in answer) && site.settings[key] !== rounded) edit(this.store, answer.site, answer.sentence);
  }

  #land(): void {
    openPage(this.store, 'settings');
    goTo(this.store, 'land');
  }
}
