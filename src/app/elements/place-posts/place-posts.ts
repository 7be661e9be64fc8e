/** The Posts place: the list of boxes, or the card of the chosen one. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../page/page.ts';

@customElement('mp-place-posts')
export class PlacePosts extends StoreElement {
  static override styles = [shared];

  protected override render() {
    return html`<mp-page><h1>${this.words.posts.title}</h1></mp-page>`;
  }
}
