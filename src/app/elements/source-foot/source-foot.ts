/** The source keys of a card as one line; opened, the full titles. */
import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sources } from '../../../birds/sources.ts';
import type { Row } from '../../../criteria/criterion.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { sourceMarks } from '../reason-rows/source-marks.ts';

@customElement('mp-source-foot')
export class SourceFoot extends StoreElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
        font: 400 0.734rem / 1.35 var(--serif);
        color: var(--quiet);
      }
      summary {
        cursor: pointer;
        min-height: 24px;
        overflow-wrap: anywhere;
      }
      dl {
        display: grid;
        grid-template-columns: minmax(60px, auto) 1fr;
        gap: 3px 10px;
        padding-top: 6px;
      }
      dt {
        font-weight: 700;
      }
      dd {
        margin: 0;
      }
    `,
  ];

  @property({ attribute: false }) rows: readonly Row[] = [];

  protected override watches() {
    return ['words'] as const;
  }

  protected override render() {
    const { groups } = sourceMarks(this.rows);
    const keys = [...new Set(groups.flat())];
    return html`<details>
      <summary>${groups.map((group, i) => `${i + 1} ${group.join(', ')}`).join(' · ')}</summary>
      <dl>
        ${keys.map((key) => html`<dt>${key}</dt><dd>${fullTitle(key)}</dd>`)}
      </dl>
    </details>`;
  }
}

/** "Title. Publisher, year." of a key; "" when the key is its own explanation. */
function fullTitle(key: string): string {
  const source = sources.find((s) => s.key === key);
  return source ? [source.title, source.publisher, source.year].filter(Boolean).join(', ') : '';
}
