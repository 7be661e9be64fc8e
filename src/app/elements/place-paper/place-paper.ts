/** The Paper place: what is printed, the sheets as they will lie on the clipboard, and every way to take them along. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { drawSheets, isDrawn } from '../../actions/paper-draw.ts';
import { printing, printSheets, takePdf } from '../../actions/paper-take.ts';
import { replan } from '../../actions/plan.ts';
import { goTo } from '../../actions/select.ts';
import { loadLetters } from '../../paper/print-pages.ts';
import { planOfRound, sheetOptions } from '../../paper/sheet-options.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../../styles/print.css';
import '../page/page.ts';
import '../paper-choices/paper-choices.ts';
import '../paper-files/paper-files.ts';
import '../sheet-preview/sheet-preview.ts';

@customElement('mp-place-paper')
export class PlacePaper extends StoreElement {
  static override styles = [
    shared,
    css`
      h1 + p {
        margin: 2px 0 8px;
      }
      .wash {
        margin: 8px 0;
      }
      mp-sheet-preview {
        margin: 8px 0 16px;
      }
      mp-paper-files {
        display: block;
        margin-top: 16px;
      }
      .note {
        margin-top: 12px;
      }
      .empty {
        font-size: 1rem;
        line-height: 1.45;
      }
      @media (min-width: 720px) {
        mp-sheet-preview {
          margin: 0;
        }
      }
    `,
  ];

  #stopPrinting: (() => void) | null = null;

  protected override watches() {
    return ['paper', 'plan', 'site', 'words', 'engine', 'round', 'pictures'] as const;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void loadLetters();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stopPrinting?.();
    this.#stopPrinting = null;
  }

  protected override updated(): void {
    this.#stopPrinting ??= printing(this.store);
    const { at, trouble } = this.state.paper;
    if (at === 'rest' && !trouble && !isDrawn(this.state)) void drawSheets(this.store);
  }

  protected override render() {
    const { plan, site } = this.state;
    if (!site) return html`<mp-page></mp-page>`;
    return plan && plan.boxes.length > 0 ? this.#paper() : this.#empty();
  }

  #paper() {
    const { paper } = this.words;
    const { plan, planOf } = this.state;
    const { choice, drawn, at, trouble } = this.state.paper;
    const part = planOfRound(plan!, choice.walker);
    const none = sheetOptions(choice, plan!, planOf!.settings.units).sheets.length === 0;
    const ready = isDrawn(this.state) && at === 'rest' && !none;
    const sheets = drawn?.sheets.length ?? 0;
    return html`<mp-page>
      <h1>${paper.title}</h1>
      <p class="sub">${sheets > 0 ? paper.sub(sheets, part.boxes.length) : paper.drawing}</p>
      ${none ? html`<p class="wash">${paper.nothingChosen}</p>` : null} ${this.#trouble(trouble)}
      <mp-sheet-preview></mp-sheet-preview>
      <mp-paper-choices></mp-paper-choices>
      <p class="small note">${paper.printNote}</p>
      <mp-paper-files></mp-paper-files>
      <p class="unseen" role="status">${this.#status(ready, sheets)}</p>
      <button slot="foot" class="filled" ?disabled=${!ready} @click=${() => takePdf(this.store)}>
        ${at === 'writing' ? paper.writing : paper.pdf}
      </button>
      <button slot="foot" ?disabled=${!ready} @click=${() => printSheets()}>${paper.print}</button>
    </mp-page>`;
  }

  #status(ready: boolean, sheets: number): string {
    const { paper } = this.words;
    if (this.state.paper.at === 'writing') return paper.writing;
    return ready ? paper.drawn(sheets) : paper.drawing;
  }

  #trouble(trouble: string | null) {
    const { paper } = this.words;
    return trouble
      ? html`<p class="wash" role="alert">
          ${paper.trouble(trouble)}
          <button class="text" @click=${() => drawSheets(this.store, true)}>${paper.again}</button>
        </p>`
      : null;
  }

  #empty() {
    const { paper, posts } = this.words;
    const { engine, plan } = this.state;
    const page = (words: string, act: unknown) =>
      html`<mp-page><h1>${paper.title}</h1><p class="empty">${words}</p>${act}</mp-page>`;
    if (engine.at === 'work') return page(paper.choosing, null);
    const [word, run] = plan
      ? [paper.toLand, () => goTo(this.store, 'land')]
      : [posts.choose, () => void replan(this.store)];
    return page(
      plan ? paper.noBoxes : paper.empty,
      html`<button slot="foot" class="filled" @click=${run}>${word}</button>`,
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-place-paper': PlacePaper;
  }
}
