/** The slips on the map: Ground, Undo and Redo, Key with the ways to move the map, and the scale. */
import { html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { redo, undo } from '../../actions/edit.ts';
import { creditOf, openPictures } from '../../actions/picture-state.ts';
import { setGround, setTheme, setUnits } from '../../actions/select.ts';
import type { MapView } from '../../map/map-view.ts';
import type { GroundLook } from '../../state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { themeNames } from '../../theme.ts';
import '../scale/scale.ts';
import { keyIcon, redoIcon, undoIcon } from './icons.ts';
import { slipsStyle } from './slips-style.ts';

const looks: readonly GroundLook[] = ['drawing', 'photo', 'lie'];

type Panel = 'key' | 'move' | 'ground';

/** Share of the map's width one press of North, South, East or West moves it. */
const pace = 0.25;

@customElement('mp-slips')
export class Slips extends StoreElement {
  static override styles = [shared, slipsStyle];

  @property({ attribute: false }) view: MapView | null = null;
  @state() private open: Panel | null = null;

  protected override watches() {
    return ['ground', 'past', 'future', 'words', 'theme', 'site', 'units', 'pictures'] as const;
  }

  protected override render() {
    return html`<div class="edge top">
        <div class="row">${this.#ground()} ${this.#history()}</div>
        ${this.state.ground === 'lie' ? this.#lieKey() : null} ${this.#photo()}
      </div>
      <div class="edge below">
        <div class="row">${this.#tools()} <mp-scale .view=${this.view}></mp-scale></div>
        ${this.open === 'key' ? this.#key() : null} ${this.open === 'move' ? this.#move() : null}
        ${this.open === 'ground' ? this.#groundPanel() : null}
      </div>
      ${this.#credit()}`;
  }

  #ground() {
    const { ground } = this.words.shell;
    return html`<div class="slip ground" role="group" aria-label=${ground.label}>
      <span class="label" aria-hidden="true">${ground.label}</span>
      ${looks.map(
        (look) =>
          html`<button aria-pressed=${this.state.ground === look} @click=${() => this.#look(look)}>
            ${ground[look]}
          </button>`,
      )}
    </div>`;
  }

  /** Photo opens its panel; pressed again it opens or closes it. */
  #look(look: GroundLook): void {
    const again = look === 'photo' && this.state.ground === 'photo';
    const open = look === 'photo' && !(again && this.state.pictures.open);
    setGround(this.store, look);
    openPictures(this.store, open);
    if (open) this.open = null;
  }

  #photo() {
    const { ground, pictures, words } = this.state;
    if (ground !== 'photo' || !pictures.open) return null;
    void import('../picture-panel/picture-panel.ts');
    return html`<section class="panel photo" aria-label=${words.pictures.title} tabindex="0">
      <mp-picture-panel .view=${this.view}></mp-picture-panel>
    </section>`;
  }

  #lieKey() {
    void import('../lie-key/lie-key.ts');
    return html`<mp-lie-key class="slip lie"></mp-lie-key>`;
  }

  #credit() {
    const credit = this.state.ground === 'photo' ? creditOf(this.state.pictures) : '';
    return credit ? html`<p class="credit small">${credit}</p>` : null;
  }

  #history() {
    const { past, future } = this.state;
    const { shell } = this.words;
    const undoing = past.at(-1)?.sentence;
    const redoing = future.at(-1)?.sentence;
    return html`<div class="slip history" role="group" aria-label=${`${shell.undo}, ${shell.redo}`}>
      <button
        ?disabled=${!undoing}
        title=${undoing ? shell.undoWhat(undoing) : shell.nothingToUndo}
        @click=${() => undo(this.store)}
      >
        ${undoIcon}${shell.undo}
      </button>
      <button
        ?disabled=${!redoing}
        title=${redoing ? shell.redoWhat(redoing) : shell.nothingToRedo}
        @click=${() => redo(this.store)}
      >
        ${redoIcon}${shell.redo}
      </button>
    </div>`;
  }

  #tools() {
    const { shell } = this.words;
    const map = () => this.view?.host?.map;
    return html`<div class="slip tools">
      <button aria-expanded=${this.open === 'key'} @click=${() => this.#toggle('key')}>${keyIcon}${shell.key}</button>
      <button @click=${() => map()?.zoomIn()}>${shell.closer}</button>
      <button @click=${() => map()?.zoomOut()}>${shell.wider}</button>
      <button aria-expanded=${this.open === 'move'} @click=${() => this.#toggle('move')}>${shell.move}</button>
      <button class="phone" aria-expanded=${this.open === 'ground'} @click=${() => this.#toggle('ground')}>
        ${shell.ground.label}
      </button>
    </div>`;
  }

  /** On a phone Ground, Undo and Redo share one panel. */
  #groundPanel() {
    const { past, future, ground } = this.state;
    const { shell } = this.words;
    return html`<section class="panel" aria-label=${shell.ground.label}>
      <div class="choices">
        ${looks.map(
          (look) =>
            html`<button aria-pressed=${ground === look} @click=${() => this.#look(look)}>
              ${shell.ground[look]}
            </button>`,
        )}
        <button ?disabled=${past.length === 0} @click=${() => undo(this.store)}>${undoIcon}${shell.undo}</button>
        <button ?disabled=${future.length === 0} @click=${() => redo(this.store)}>${redoIcon}${shell.redo}</button>
      </div>
    </section>`;
  }

  #key() {
    void import('../key/key.ts');
    const { shell } = this.words;
    return html`<section class="panel" aria-label=${shell.keyTitle} tabindex="0">
      <h2>${shell.keyTitle}</h2>
      <mp-key></mp-key>
      ${this.#choice(
        shell.theme.label,
        themeNames.map((theme) => ({
          word: shell.theme[theme],
          chosen: this.state.theme === theme,
          choose: () => setTheme(this.store, theme),
        })),
      )}
      ${this.#choice(
        shell.units.label,
        (['us', 'metric'] as const).map((units) => ({
          word: shell.units[units],
          chosen: this.state.units === units,
          choose: () => setUnits(this.store, units),
        })),
      )}
    </section>`;
  }

  #choice(label: string, options: readonly { word: string; chosen: boolean; choose: () => void }[]) {
    return html`<div class="choice" role="group" aria-label=${label}>
      <span class="label" aria-hidden="true">${label}</span>
      ${options.map(
        ({ word, chosen, choose }) => html`<button aria-pressed=${chosen} @click=${choose}>${word}</button>`,
      )}
    </div>`;
  }

  #move() {
    const { shell } = this.words;
    const pan = (x: number, y: number) => () => {
      const map = this.view?.host?.map;
      const box = map?.getContainer();
      if (map && box) map.panBy([x * pace * box.clientWidth, y * pace * box.clientHeight], { duration: 160 });
    };
    return html`<section class="panel" aria-label=${shell.moveTitle}>
      <div class="cross">
        <button class="north" @click=${pan(0, -1)}>${shell.north}</button>
        <button class="west" @click=${pan(-1, 0)}>${shell.west}</button>
        <button class="whole" @click=${() => this.view?.fit()}>${shell.whole}</button>
        <button class="east" @click=${pan(1, 0)}>${shell.east}</button>
        <button class="south" @click=${pan(0, 1)}>${shell.south}</button>
      </div>
    </section>`;
  }

  #toggle(what: Panel): void {
    this.open = this.open === what ? null : what;
  }
}
