/** Switches of the hand: snapping, shared borders, the keyboard's cross. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { setLand } from '../../actions/land-state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';

const names = ['snap', 'shared', 'cross'] as const;

@customElement('mp-land-switches')
export class LandSwitches extends StoreElement {
  static override styles = [shared, landStyle];

  protected override watches() {
    return ['land', 'words'] as const;
  }

  protected override render() {
    const { switches } = this.words.land;
    return html`<div role="group" aria-label=${switches.label}>
      ${names.map(
        (name) =>
          html`<label class="switch"
            ><input
              type="checkbox"
              data-switch=${name}
              .checked=${this.state.land[name]}
              @change=${(event: Event) => this.#set(name, event)}
            />${switches[name]}</label
          >`,
      )}
    </div>`;
  }

  #set(name: (typeof names)[number], { target }: Event): void {
    setLand(this.store, { [name]: (target as HTMLInputElement).checked });
  }
}
