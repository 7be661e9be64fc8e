/** What the spacing rule binds, in words, with the switch for its drawing on the map. Nothing where every wanted site found a place. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { lengthText } from '../../../criteria/units.ts';
import { setPosts } from '../../actions/posts-state.ts';
import { bindingOf } from '../../map/overlays/binding-shapes.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';

@customElement('mp-posts-binding')
export class PostsBinding extends StoreElement {
  static override styles = [
    shared,
    css`
      section {
        margin-bottom: 10px;
      }
      button {
        margin-top: 4px;
        padding-left: 0;
      }
    `,
  ];

  protected override watches() {
    return ['plan', 'planOf', 'posts', 'words', 'units'] as const;
  }

  protected override render() {
    const { plan, planOf, posts, units } = this.state;
    const bound = plan && planOf ? bindingOf(plan, planOf.settings) : null;
    if (!bound) return null;
    const { binding } = this.words.posts;
    const reach = lengthText(bound.needed, units, 100);
    return html`<section>
      <h2>${binding.title}</h2>
      <p class="small">${bound.pairs.length > 0 ? binding.says(bound.pairs.length, reach) : binding.alone(reach)}</p>
      <button
        class="text"
        data-do="binding"
        aria-pressed=${posts.binding}
        @click=${() => setPosts(this.store, { binding: !posts.binding })}
      >
        ${posts.binding ? binding.hide : binding.show}
      </button>
    </section>`;
  }
}
