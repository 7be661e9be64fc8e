/** Sharing: the round out by file, share sheet or code – after asking how exactly places may be told – and visits back. */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { type Answer, roundFile, roundLink, siteName, takeFile, visitsFile } from '../../actions/round-share.ts';
import { roundOf } from '../../actions/round-view.ts';
import { canShare, type OutFile, saveFile, shareFile } from '../../field/hand-over.ts';
import type { Places } from '../../field/round-file.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { roundStyle } from '../place-round/round-style.ts';
import { mostForScreen, qrPicture } from './qr-picture.ts';

/** Rows of the report shown at once. */
const shown = 12;

@customElement('mp-round-share')
export class RoundShare extends StoreElement {
  static override styles = [
    shared,
    roundStyle,
    css`
      .places button {
        flex: 1 1 30%;
        flex-direction: column;
        gap: 0;
        padding: 6px 8px;
      }
      .qr svg {
        display: block;
        width: min(100%, 320px);
        margin: 10px auto;
      }
      code {
        display: block;
        overflow-wrap: anywhere;
        font-size: 0.75rem;
        max-height: 5.5em;
        overflow: auto;
      }
      .report {
        border-left: 4px solid var(--moss);
        padding: 6px 10px;
        margin-top: 10px;
      }
      input[type="file"] {
        width: 100%;
        margin-top: 4px;
      }
    `,
  ];

  @state() private places: Places | null = null;
  @state() private code = false;
  @state() private said = '';
  @state() private answer: Answer | null = null;

  protected override watches() {
    return ['round', 'plan', 'words', 'site', 'units'] as const;
  }

  protected override render() {
    const { share } = this.words.round;
    return html`<h1>${share.title}</h1>
      ${roundOf(this.state) ? this.#out() : null} ${this.#home()} ${this.#back()}
      <p role="status">${this.said}</p>`;
  }

  #out() {
    const { share } = this.words.round;
    const file = this.places && roundFile(this.state, this.places);
    const choice = (places: Places, word: string, help: string) =>
      html`<button aria-pressed=${this.places === places} data-places=${places} @click=${() => (this.places = places)}>
        <span>${word}</span><span class="small">${help}</span>
      </button>`;
    return html`<section>
      <h2>${share.out}</h2>
      <p>${share.outText}</p>
      <p><b>${share.places}</b></p>
      <div class="choices places" role="group" aria-label=${share.places}>
        ${choice('exact', share.exact, share.exactHelp)} ${choice('about', share.about, share.aboutHelp)}
        ${choice('none', share.none, share.noneHelp)}
      </div>
      <div class="buttons">
        ${this.#handOver(file, share.send, share.save)}
        <button ?disabled=${this.places === null} aria-expanded=${this.code} @click=${() => (this.code = !this.code)}>
          ${share.code}
        </button>
      </div>
      ${this.places === null ? html`<p class="small">${share.ask}</p>` : null} ${this.code ? this.#code() : null}
    </section>`;
  }

  #code() {
    const { share } = this.words.round;
    if (this.places !== 'exact') return html`<p class="wash">${share.codeNeedsExact}</p>`;
    const link = roundLink(this.state, location.href);
    const count = roundOf(this.state)?.stops.length ?? 0;
    if (link === null) return html`<p class="wash">${share.codeNoPlaces}</p>`;
    if (link.length > mostForScreen) return html`<p class="wash">${share.codeTooLong}</p>`;
    return html`<div class="qr">
      ${qrPicture(link, share.codeLabel(count, siteName(this.state)))}
      <p class="small">${share.codeText}</p>
      <p class="small">${share.link}</p>
      <code>${link}</code>
    </div>`;
  }

  #home() {
    const { share } = this.words.round;
    const { log } = this.state.round;
    const file = log.length > 0 ? visitsFile(this.state) : null;
    return html`<section>
      <h2>${share.home}</h2>
      <p>${share.homeText(log.length)}</p>
      <div class="buttons">${this.#handOver(file, share.sendVisits, share.saveVisits)}</div>
    </section>`;
  }

  #handOver(file: OutFile | null, send: string, save: string) {
    return html`${
      file && canShare(file)
        ? html`<button class="filled" @click=${() => void this.#send(file)}>${send}</button>`
        : null
    }<button ?disabled=${!file} @click=${() => file && this.#save(file)}>${save}</button>`;
  }

  #save(file: OutFile): void {
    saveFile(file);
    this.said = this.words.round.share.saved(file.name);
  }

  async #send(file: OutFile): Promise<void> {
    const { share } = this.words.round;
    try {
      this.said = (await shareFile(file, siteName(this.state))) === 'sent' ? share.sent : share.cancelled;
    } catch {
      // A share sheet that fails must not cost the file.
      this.#save(file);
    }
  }

  #back() {
    const { share } = this.words.round;
    return html`<section>
      <h2>${share.open}</h2>
      <p>${share.openText}</p>
      <label>${share.choose}<input type="file" accept=".json,.txt,application/json,text/plain" multiple @change=${this.#take} /></label>
      ${this.answer ? this.#report(this.answer) : null}
    </section>`;
  }

  readonly #take = async (event: Event): Promise<void> => {
    const input = event.target as HTMLInputElement;
    for (const file of input.files ?? []) this.answer = await takeFile(this.store, await file.text());
    input.value = '';
    await this.updateComplete;
    this.renderRoot.querySelector('.report, .wash[role=alert]')?.scrollIntoView({ block: 'nearest' });
  };

  #report(answer: Answer) {
    const { share } = this.words.round;
    if (answer.kind === 'refused') return html`<p class="wash" role="alert">${answer.reason} ${share.notTaken}</p>`;
    if (answer.kind === 'round') return html`<p class="report" role="status">${share.roundTaken(answer.boxes)}</p>`;
    const { added, same, conflicts, issues } = answer.taken;
    const list = (sentences: readonly string[]) =>
      html`<ul class="plain">
        ${sentences.slice(0, shown).map((sentence) => html`<li>${sentence}</li>`)}
        ${sentences.length > shown ? html`<li>${share.more(sentences.length - shown)}</li>` : null}
      </ul>`;
    return html`<div class="report" role="status">
      <p><b>${share.report(added.length, same)}</b></p>
      ${answer.kept ? null : html`<p class="weak">${share.notSaved}</p>`}
      ${conflicts.length > 0 ? html`<p class="weak">${share.conflicts(conflicts.length)}</p>${list(conflicts.map((one) => one.sentence))}` : null}
      ${issues.length > 0 ? html`<p>${share.issues(issues.length)}</p>${list(issues.map((one) => `${one.sentence} ${one.fix}`))}` : null}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-round-share': RoundShare;
  }
}
