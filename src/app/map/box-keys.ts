/** The boxes for the keyboard and for who cannot see the map: one tab stop, arrows from box to box in walking order, Enter opens the card. */
import { css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { PlannedBox } from '../../plan-types.ts';
import { dropHand, giveUpHand, moveHand, takeHand } from '../actions/hand.ts';
import { select } from '../actions/select.ts';
import { birdName } from '../bird-name.ts';
import { onlyHandMoved } from '../only-hand-moved.ts';
import { shownPlan } from '../shown-plan.ts';
import type { AppState } from '../state.ts';
import { StoreElement } from '../store-element.ts';
import { stepTo } from './box-steps.ts';
import type { MapHost } from './host.ts';
import type { MapView } from './map-view.ts';
import { chosenNumber, drawnAt } from './overlays/boxes.ts';

/** East and north of each arrow. */
const ways: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

/** After the last key the box is put down, ms (ours). */
const quiet = 700;

/** Runs `act` once nothing was said for `quiet` milliseconds. */
function whenQuiet(act: () => void) {
  let timer = 0;
  const cancel = () => clearTimeout(timer);
  return {
    cancel,
    soon() {
      cancel();
      timer = window.setTimeout(act, quiet);
    },
  };
}

@customElement('mp-box-keys')
export class BoxKeys extends StoreElement {
  static override styles = css`
    :host {
      position: absolute;
      inset: 0;
      pointer-events: none;
      overflow: hidden;
    }
    [role="listbox"] {
      outline: none;
    }
    [role="option"] {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .ring {
      position: absolute;
      left: -26px;
      top: -26px;
      width: 52px;
      height: 52px;
      box-sizing: border-box;
      border: 3px solid var(--sky);
      border-radius: 50%;
      box-shadow: 0 0 0 2px var(--paper), inset 0 0 0 2px var(--paper);
      display: none;
    }
    [role="listbox"]:focus-visible ~ .ring {
      display: block;
    }
  `;

  @property({ attribute: false }) view: MapView | null = null;
  @state() private at = 0;
  #followed: MapHost | null = null;

  protected override watches() {
    return ['plan', 'selection', 'words', 'theme', 'posts'] as const;
  }

  protected override ignores(state: AppState, before: AppState): boolean {
    return onlyHandMoved(state, before);
  }

  protected override willUpdate(): void {
    const boxes = this.#boxes();
    const chosen = boxes.findIndex((b) => b.number === chosenNumber(this.state));
    if (chosen >= 0 && !this.matches(':focus-within')) this.at = chosen;
    if (this.at >= boxes.length) this.at = 0;
  }

  protected override render() {
    const boxes = this.#boxes();
    if (boxes.length === 0) return null;
    const { shell } = this.words;
    return html`<div
        role="listbox"
        tabindex="0"
        aria-label=${shell.boxesOnMap}
        aria-description=${this.words.posts.moveKeys}
        aria-activedescendant=${`box-${boxes[this.at]?.number}`}
        @keydown=${this.#keys}
        @focus=${this.#place}
      >
        ${boxes.map((box, i) => this.#option(box, i))}
      </div>
      <div class="ring"></div>`;
  }

  protected override updated(): void {
    this.#follow();
    this.#place();
  }

  #option(box: PlannedBox, i: number) {
    const { posts } = this.words;
    const said = `${posts.box(box.number)}, ${birdName(box.bird)}, ${posts.score} ${Math.round(box.card.score)}`;
    return html`<div role="option" id=${`box-${box.number}`} aria-selected=${i === this.at}>${said}</div>`;
  }

  #boxes(): readonly PlannedBox[] {
    return shownPlan(this.state)?.boxes ?? [];
  }

  #keys(event: KeyboardEvent): void {
    const boxes = this.#boxes();
    const box = boxes[this.at];
    if (box && box.number === chosenNumber(this.state) && this.state.place === 'posts' && this.#stepHand(event, box)) {
      event.preventDefault();
      return;
    }
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      if (box) select(this.store, { of: 'box', number: box.number });
      return;
    }
    const next = stepTo(event.key, this.at, boxes.length);
    if (next === null) return;
    event.preventDefault();
    this.at = next;
    this.#intoView(boxes[next]);
  }

  /** Arrows move the open box: 1 m, with Shift 0.1 m. A burst of presses is one edit, made when the keys rest. */
  #stepHand(event: KeyboardEvent, box: PlannedBox): boolean {
    const way = ways[event.key];
    const { hand } = this.state.posts;
    if (event.key === 'Escape' && hand) {
      this.#drop.cancel();
      giveUpHand(this.store);
      event.stopPropagation();
      return true;
    }
    if (!way || event.ctrlKey || event.metaKey || event.altKey) return false;
    if (hand?.post !== box.post) takeHand(this.store, box);
    const step = event.shiftKey ? 0.1 : 1;
    const { at } = this.state.posts.hand ?? box;
    moveHand(this.store, { x: at.x + way[0] * step, y: at.y + way[1] * step });
    this.#drop.soon();
    return true;
  }

  readonly #drop = whenQuiet(() => void dropHand(this.store));

  /** The map moves only when the box is out of sight. */
  #intoView(box: PlannedBox | undefined): void {
    const map = this.view?.host?.map;
    if (!map || !box) return;
    const at = map.project(box.position);
    const { clientWidth, clientHeight } = map.getContainer();
    const { left, top, right, bottom } = this.view?.padding ?? { left: 0, top: 0, right: 0, bottom: 0 };
    const seen =
      at.x > left + 30 && at.x < clientWidth - right - 30 && at.y > top + 30 && at.y < clientHeight - bottom - 30;
    if (!seen) map.panTo(box.position, { duration: 160 });
  }

  #follow(): void {
    const host = this.view?.host ?? null;
    if (!host || host === this.#followed) return;
    this.#followed = host;
    host.map.on('move', () => this.#place());
  }

  readonly #place = (): void => {
    const { host } = this.view ?? {};
    const plan = shownPlan(this.state);
    const box = plan?.boxes[this.at];
    const ring = this.renderRoot.querySelector<HTMLElement>('.ring');
    if (!host || !plan || !box || !ring) return;
    const { x, y } = drawnAt(host, box, plan);
    ring.style.transform = `translate(${x}px, ${y}px)`;
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-box-keys': BoxKeys;
  }
}
