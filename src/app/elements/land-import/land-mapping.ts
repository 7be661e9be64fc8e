/** What the file's own words become: one row a value, the kind chosen by the person; rules already known are filled in. */
import { html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { AttributeSummary, AttributeValue } from '../../../exchange/attribute-values.ts';
import type { Mapping } from '../../../exchange/mapping.ts';
import { openStreetMapPreset } from '../../../exchange/openstreetmap-preset.ts';
import { allKinds, shapeOf } from '../../../site/kinds.ts';
import type { Kind } from '../../../site/types.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';
import { kindNow, withRule } from './map-rows.ts';

/** Attributes and values listed: those that sort things into few classes come first. */
const most = { attributes: 8, values: 30 };

@customElement('mp-land-mapping')
export class LandMapping extends StoreElement {
  static override styles = [shared, landStyle];

  @property({ attribute: false }) mapping!: Mapping;
  @property({ attribute: false }) summaries: readonly AttributeSummary[] = [];

  protected override watches() {
    return ['words'] as const;
  }

  protected override render() {
    const { bring } = this.words.land;
    const classes = this.summaries.filter(
      ({ different, count }) => different < Math.max(2, count) || count <= most.values,
    );
    return html`<details data-mapping>
      <summary>${bring.mapping}</summary>
      <p class="small">${bring.mappingHint}</p>
      <p><button data-do="osm" @click=${() => this.#send({ ...openStreetMapPreset, otherwise: this.mapping.otherwise })}>${bring.osm}</button></p>
      ${classes.slice(0, most.attributes).map((one) => this.#attribute(one))}
      <section>
        <h2>${bring.otherwise}</h2>
        ${(['area', 'line', 'point'] as const).map((shape) =>
          this.#select(
            bring.shapes[shape],
            this.mapping.otherwise[shape] ?? '',
            allKinds.filter((kind) => shapeOf(kind) === shape),
            (kind) => {
              const { [shape]: _old, ...others } = this.mapping.otherwise;
              this.#send({ ...this.mapping, otherwise: kind === '' ? others : { ...others, [shape]: kind } });
            },
          ),
        )}
      </section>
    </details>`;
  }

  #attribute({ attribute, values }: AttributeSummary) {
    return html`<section>
      <h2>${attribute}</h2>
      ${values.slice(0, most.values).map((value) => this.#value(attribute, value))}
    </section>`;
  }

  #value(attribute: string, { value, count, shapes }: AttributeValue) {
    const fits = allKinds.filter(
      (kind) => shapes.includes(shapeOf(kind)) || (shapeOf(kind) === 'area' && shapes.includes('line')),
    );
    return this.#select(`${value} (${count})`, kindNow(this.mapping, attribute, value) ?? '', fits, (kind) =>
      this.#send(withRule(this.mapping, attribute, value, kind === '' ? undefined : kind === 'leave' ? null : kind)),
    );
  }

  #select(
    word: string,
    now: Kind | 'leave' | '',
    kinds: readonly Kind[],
    changed: (kind: Kind | 'leave' | '') => void,
  ) {
    const { bring } = this.words.land;
    const options: readonly (readonly [string, string])[] = [
      ['', bring.noRule],
      ['leave', bring.leaveOut],
      ...kinds.map((kind) => [kind, this.words.kinds[kind] ?? kind] as const),
    ];
    return html`<label
      ><span>${word}</span
      ><select @change=${({ target }: Event) => changed((target as HTMLSelectElement).value as Kind)}>
        ${options.map(([value, said]) => html`<option value=${value} ?selected=${value === now}>${said}</option>`)}
      </select></label
    >`;
  }

  #send(mapping: Mapping): void {
    this.dispatchEvent(new CustomEvent('mp-mapping', { detail: mapping }));
  }
}
