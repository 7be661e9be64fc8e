/** The plan as files for other programs, and the sheet shown as a picture. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { takeFile, takePicture } from '../../actions/paper-take.ts';
import { planFiles } from '../../paper/plan-files.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';

@customElement('mp-paper-files')
export class PaperFiles extends StoreElement {
  static override styles = [
    shared,
    css`
      * {
        box-sizing: border-box;
      }
      ul {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 8px;
        margin-top: 6px;
      }
      button {
        width: 100%;
        height: 100%;
        padding: 4px 10px;
        text-align: left;
        line-height: 1.2;
      }
      button span {
        display: block;
        font-weight: 400;
      }
    `,
  ];

  protected override watches() {
    return ['paper', 'plan', 'words'] as const;
  }

  protected override render() {
    const { paper } = this.words;
    const nothing = this.state.paper.drawn === null;
    return html`<h2>${paper.files}</h2>
      <p class="small">${paper.filesNote}</p>
      <ul>
        ${planFiles.map((file) => this.#row(file.id, false, () => takeFile(this.store, file)))}
        ${(['svg', 'png'] as const).map((as) => this.#row(as, nothing, () => void takePicture(this.store, as)))}
      </ul>`;
  }

  #row(id: keyof typeof this.words.paper.file, off: boolean, take: () => void) {
    const [name, use] = this.words.paper.file[id];
    return html`<li>
      <button data-file=${id} ?disabled=${off} @click=${take}>${name}<span class="small">${use}</span></button>
    </li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-paper-files': PaperFiles;
  }
}
