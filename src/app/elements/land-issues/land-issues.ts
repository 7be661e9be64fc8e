/** Everything to look at: trouble of the file and of the plan, each with Show and what can be done about it. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { deleteFeatures } from '../../../edits/delete-features.ts';
import { deleteKept, giveKind } from '../../../edits/mend-kept.ts';
import { allKinds, nearestKind } from '../../../site/kinds.ts';
import type { Issue, Kind } from '../../../site/types.ts';
import { change, choose, lookAt } from '../../actions/land-state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';
import { type KeptRow, keptRows } from './kept-rows.ts';

@customElement('mp-land-issues')
export class LandIssues extends StoreElement {
  static override styles = [shared, landStyle];

  protected override watches() {
    return ['words', 'site', 'issues', 'plan', 'land'] as const;
  }

  protected override render() {
    const { site, issues, plan, land } = this.state;
    if (!site) return null;
    const words = this.words.land.issues;
    const kept = keptRows(site, issues);
    const used = new Set(kept.map(({ issue }) => issue));
    const rest = [...issues.filter((issue) => !used.has(issue)), ...(plan?.issues ?? [])];
    return html`${land.trouble ? html`<p class="wash" role="alert">${land.trouble.sentence}</p>` : null}
      ${kept.length > 0 ? html`<section><h2>${words.kept(kept.length)}</h2><p class="small">${words.keptHint}</p>${kept.map((row) => this.#kept(row))}</section>` : null}
      ${rest.length > 0 ? html`<section><h2>${words.rest}</h2><ul>${rest.map((issue) => this.#issue(issue))}</ul></section>` : null}
      ${kept.length + rest.length === 0 ? html`<p>${words.none}</p>` : null}`;
  }

  #kept({ index, name, issue, guess }: KeptRow) {
    const { issues } = this.words.land;
    const { kinds } = this.words;
    return html`<div class="wash" data-kept=${index}>
      <p><strong>${name}</strong></p>
      <p>${issue?.sentence ?? issues.noReason} ${issue?.fix ?? ''}</p>
      ${
        guess === null
          ? null
          : html`<div class="unit" style="margin-top:8px">
              <select data-kind aria-label=${issues.kindFor(name)}>
                ${allKinds.map((kind) => html`<option value=${kind} ?selected=${kind === nearestKind(guess)}>${kinds[kind]}</option>`)}
              </select>
              <button data-do="give-kind" @click=${(event: Event) => this.#give(index, event)}>${issues.giveKind}</button>
            </div>`
      }
      <div class="row" style="margin-top:8px">
        ${issue?.place ? html`<button @click=${() => lookAt(this.store, issue.place!)}>${this.words.land.showOnMap}</button>` : null}
        <button data-do="delete-kept" @click=${() => this.#deleteKept(index)}>${this.words.land.delete}</button>
      </div>
    </div>`;
  }

  #give(index: number, { currentTarget }: Event): void {
    const { site } = this.state;
    const select = (currentTarget as HTMLElement).parentElement?.querySelector('select');
    if (site && select) change(this.store, giveKind(site, index, select.value as Kind));
  }

  #deleteKept(index: number): void {
    const { site } = this.state;
    if (site) change(this.store, deleteKept(site, index));
  }

  #issue(issue: Issue) {
    const { land } = this.words;
    const feature = this.state.site?.features.find(({ id }) => id === issue.feature);
    const severe = issue.severity === 'error' || issue.severity === 'warning';
    return html`<li class=${severe ? 'wash' : ''} style="margin-top:10px">
      <p>${issue.sentence} ${issue.fix}</p>
      <div class="row">
        ${feature || issue.place ? html`<button data-do="show" @click=${() => this.#show(issue)}>${land.showOnMap}</button>` : null}
        ${feature ? html`<button @click=${() => choose(this.store, feature.id)}>${land.issues.change}</button>` : null}
        ${feature && severe ? html`<button @click=${() => this.#delete(feature.id)}>${land.delete}</button>` : null}
      </div>
    </li>`;
  }

  #show(issue: Issue): void {
    const geometry = this.state.site?.features.find(({ id }) => id === issue.feature)?.geometry;
    if (issue.place) lookAt(this.store, issue.place);
    else if (geometry) lookAt(this.store, geometry);
  }

  #delete(id: string): void {
    const { site } = this.state;
    if (site) change(this.store, deleteFeatures(site, [id]));
  }
}
