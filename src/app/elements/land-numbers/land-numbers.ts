/** Exact entry: typed coordinates, bearing and distance, two tapes, the device's own position. What comes out is offered on the map. */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { readPosition } from '../../../exchange/coordinates.ts';
import { fixByBearing, fixByTapes, isFix } from '../../../geometry/fix.ts';
import { makeFrame } from '../../../ground/frame.ts';
import { type LonLat, type PointKind, pointKinds } from '../../../site/types.ts';
import { placeUse, usePlace } from '../../actions/land-offer.ts';
import { setLand } from '../../actions/land-state.ts';
import { length } from '../../format.ts';
import type { Offer } from '../../land-state.ts';
import { typedLength } from '../../length-input.ts';
import { offerLetters } from '../../map/drawing/offers.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';
import { type DeviceFix, devicePosition, goodFix } from './device.ts';
import { type Landmark, landmarksOf } from './landmarks.ts';

@customElement('mp-land-numbers')
export class LandNumbers extends StoreElement {
  static override styles = [
    shared,
    landStyle,
    css`
      .offers button {
        text-align: left;
        margin-top: 6px;
        padding: 6px 12px;
      }
    `,
  ];

  /** What the last answer says, and whether it is trouble. */
  @state() private said: { readonly sentence: string; readonly bad: boolean } | null = null;
  @state() private lonFirst = false;
  @state() private poor: DeviceFix | null = null;
  @state() private waiting = false;

  protected override watches() {
    return ['words', 'units', 'site', 'land', 'selection'] as const;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.state.land.offers.length > 0) setLand(this.store, { offers: [] });
  }

  protected override render() {
    const { numbers } = this.words.land;
    return html`${placeUse(this.store) === 'new' ? this.#becomes() : null}
      <section>
        <h2>${numbers.typed}</h2>
        <p class="small" id="typed-hint">${numbers.typedHint}</p>
        <input data-typed aria-label=${numbers.typed} aria-describedby="typed-hint" @keydown=${this.#enter(() => this.#readTyped())} />
        <label class="switch"
          ><input type="checkbox" .checked=${this.lonFirst} @change=${({ target }: Event) => (this.lonFirst = (target as HTMLInputElement).checked)} />${numbers.lonFirst}</label
        >
        <button data-work="typed" @click=${() => this.#readTyped()}>${numbers.work}</button>
      </section>
      ${this.#fromLandmarks()}
      <section>
        <h2>${numbers.device}</h2>
        <div class="row">
          <button data-work="device" ?disabled=${this.waiting} @click=${() => this.#askDevice()}>${numbers.askDevice}</button>
          ${this.poor ? html`<button data-anyway @click=${() => this.#useFix(this.poor!)}>${numbers.useAnyway}</button>` : null}
        </div>
      </section>
      ${this.#answer()}`;
  }

  #becomes() {
    const { land, kinds } = this.words;
    return html`<label
      ><span>${land.numbers.becomes}</span
      ><select data-placed @change=${({ target }: Event) => setLand(this.store, { placed: (target as HTMLSelectElement).value as PointKind })}>
        ${['post' as const, ...pointKinds.filter((kind) => kind !== 'post')].map(
          (kind) => html`<option value=${kind} ?selected=${kind === this.state.land.placed}>${kinds[kind]}</option>`,
        )}
      </select></label
    >`;
  }

  #fromLandmarks() {
    const { numbers } = this.words.land;
    const marks = this.state.site ? landmarksOf(this.state.site, this.words) : [];
    if (marks.length === 0) return html`<p class="small">${numbers.noLandmark}</p>`;
    const { unit } = this.words.land;
    const far = (name: string) =>
      html`<label
        ><span>${numbers.far}</span
        ><span class="unit"><input data-far=${name} inputmode="decimal" @keydown=${this.#enter(() => (name === 'bearing' ? this.#byBearing(marks) : this.#byTapes(marks)))} />${unit[this.state.units]}</span></label
      >`;
    return html`<section>
        <h2>${numbers.bearing}</h2>
        ${this.#select('bearing', numbers.from, marks)}
        <div class="two">
          <label><span>${numbers.toward}</span><input data-toward inputmode="decimal" /></label>
          ${far('bearing')}
        </div>
        <p><button data-work="bearing" @click=${() => this.#byBearing(marks)}>${numbers.work}</button></p>
      </section>
      ${
        marks.length < 2
          ? null
          : html`<section>
              <h2>${numbers.tapes}</h2>
              <p class="small">${numbers.tapesHint}</p>
              <div class="two">${this.#select('a', numbers.first, marks)} ${far('a')}</div>
              <div class="two">${this.#select('b', numbers.second, marks, 1)} ${far('b')}</div>
              <p><button data-work="tapes" @click=${() => this.#byTapes(marks)}>${numbers.work}</button></p>
            </section>`
      }`;
  }

  #select(name: string, word: string, marks: readonly Landmark[], chosen = 0) {
    return html`<label
      ><span>${word}</span
      ><select data-from=${name}>
        ${marks.map((mark, i) => html`<option value=${mark.id} ?selected=${i === chosen}>${mark.word}</option>`)}
      </select></label
    >`;
  }

  #answer() {
    const { offers } = this.state.land;
    const { numbers } = this.words.land;
    const use = numbers.use[placeUse(this.store)];
    return html`<div class="offers" role="status">
      ${this.said ? html`<p class=${this.said.bad ? 'wash' : ''}>${this.said.sentence}</p>` : null}
      ${offers.map(
        ({ at, word }, i) =>
          html`<button class=${offers.length === 1 ? 'filled wide' : 'wide'} data-offer=${i} @click=${() => this.#use(at)}>
            ${use}${offers.length > 1 ? ` (${offerLetters[i]})` : ''}${word ? html`<span class="why">${word}</span>` : null}
          </button>`,
      )}
    </div>`;
  }

  #offer(offers: readonly Offer[], sentence: string, bad = false): void {
    this.said = { sentence, bad };
    this.poor = null;
    setLand(this.store, { offers });
  }

  #use(at: LonLat): void {
    if (usePlace(this.store, at)) this.said = null;
  }

  #enter(run: () => void) {
    return (event: KeyboardEvent) => {
      if (event.key !== 'Enter') return;
      event.preventDefault();
      event.stopPropagation();
      run();
    };
  }

  #readTyped(): void {
    const { position, said, issue } = readPosition(this.#value('[data-typed]'), { lonFirst: this.lonFirst });
    if (position) this.#offer([{ at: position, word: '' }], said);
    else this.#offer([], `${issue?.sentence ?? ''} ${issue?.fix ?? ''}`.trim(), true);
  }

  #byBearing(marks: readonly Landmark[]): void {
    const { numbers } = this.words.land;
    const mark = this.#mark('bearing', marks);
    const metres = this.#metres('bearing');
    const degrees = Number(this.#value('[data-toward]').trim().replace(',', '.').replace('°', ''));
    if (this.#value('[data-toward]').trim() === '' || !(degrees >= 0 && degrees <= 360)) {
      this.#offer([], numbers.needDegrees, true);
      return;
    }
    if (metres === null || metres < 0) {
      this.#offer([], numbers.needLength, true);
      return;
    }
    const at = makeFrame(mark.at).toLonLat(fixByBearing({ x: 0, y: 0 }, degrees, metres));
    this.#offer([{ at, word: '' }], numbers.found(length(metres, this.state.units), degrees, mark.word));
  }

  #byTapes(marks: readonly Landmark[]): void {
    const { numbers } = this.words.land;
    const [a, b] = [this.#mark('a', marks), this.#mark('b', marks)];
    const [fromA, fromB] = [this.#metres('a'), this.#metres('b')];
    if (!fromA || !fromB || fromA < 0 || fromB < 0) {
      this.#offer([], numbers.needLength, true);
      return;
    }
    const frame = makeFrame(a.at);
    const fix = fixByTapes({ x: 0, y: 0 }, fromA, frame.toPlane(b.at), fromB);
    if (!isFix(fix)) {
      this.#offer([], fix.reason, true);
      return;
    }
    const offers = [
      { at: frame.toLonLat(fix.left), word: numbers.left(a.word, b.word) },
      { at: frame.toLonLat(fix.right), word: numbers.right(a.word, b.word) },
    ];
    const flat = fix.crossing < 30 ? ` ${numbers.flat(`${Math.round(fix.crossing)}°`)}` : '';
    this.#offer(offers, numbers.twoAnswers + flat);
  }

  async #askDevice(): Promise<void> {
    const { numbers } = this.words.land;
    this.waiting = true;
    this.said = { sentence: numbers.waiting, bad: false };
    const fix = await devicePosition();
    this.waiting = false;
    if (!this.isConnected) return;
    if ('trouble' in fix) return this.#offer([], fix.trouble === 'denied' ? numbers.denied : numbers.noDevice, true);
    if (fix.radius <= goodFix) return this.#useFix(fix);
    this.#offer([], numbers.poor(length(fix.radius, this.state.units)), true);
    this.poor = fix;
  }

  #useFix({ at, radius }: DeviceFix): void {
    this.#offer([{ at, radius, word: '' }], this.words.land.numbers.fix(length(radius, this.state.units)));
  }

  #value(selector: string): string {
    return this.renderRoot.querySelector<HTMLInputElement>(selector)?.value ?? '';
  }

  #metres(name: string): number | null {
    return typedLength(this.#value(`[data-far="${name}"]`), this.state.units);
  }

  #mark(name: string, marks: readonly Landmark[]): Landmark {
    const id = this.#value(`[data-from="${name}"]`);
    return marks.find((mark) => mark.id === id) ?? marks[0]!;
  }
}
