/** "Ready for the field?": what must hold before the signal is left, each row said in words. */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { picturesOf, readPictures } from '../../actions/picture-state.ts';
import { startPosition } from '../../actions/round.ts';
import { roundsOf } from '../../actions/round-view.ts';
import { pictureFacts } from '../../field/picture-facts.ts';
import { isReady, type PictureFacts, type ReadyFacts, type ReadyRow, readyRows, sizeText } from '../../field/ready.ts';
import { appSize } from '../../offline/update.ts';
import type { AppState } from '../../state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { roundStyle } from '../place-round/round-style.ts';

interface Measured {
  readonly persisted: boolean | null;
  readonly used: number | null;
  readonly room: number | null;
  readonly appSize: number | null;
  readonly picture: PictureFacts | null;
}

const unknown: Measured = { persisted: null, used: null, room: null, appSize: null, picture: null };

@customElement('mp-round-ready')
export class RoundReady extends StoreElement {
  static override styles = [
    shared,
    roundStyle,
    css`
      dl {
        margin: 12px 0;
      }
      .row {
        display: grid;
        grid-template-columns: 52px 1fr;
        gap: 0 8px;
        padding: 8px 0;
        border-bottom: 1px solid var(--ring);
      }
      dt {
        font: 700 1rem / 1.3 var(--serif);
        grid-column: 2;
      }
      dd {
        margin: 0;
        grid-column: 2;
      }
      .mark {
        grid-row: 1 / 3;
        grid-column: 1;
        font-weight: 700;
        color: var(--moss);
      }
      .no .mark,
      .careful .mark {
        color: var(--rust);
      }
      .verdict {
        font: 700 1.125rem / 1.3 var(--serif);
      }
    `,
  ];

  @state() private measured: Measured = unknown;

  protected override watches() {
    return ['round', 'plan', 'planOf', 'site', 'words', 'pictures'] as const;
  }

  protected override changed(now: AppState, before: AppState): void {
    if (now.pictures.list !== before.pictures.list) void this.#measure();
  }

  protected override firstUpdated(): void {
    void this.#measure();
  }

  protected override render() {
    const { ready } = this.words.round;
    const facts = this.#facts();
    const rows = readyRows(facts);
    return html`<h1>${ready.title}</h1>
      <p class="verdict ${isReady(rows) ? '' : 'weak'}" role="status">${isReady(rows) ? ready.yes : ready.no}</p>
      <dl>
        ${rows.map(
          (row) =>
            html`<div class="row ${row.state}" data-row=${row.id}>
              <dt>${ready.rows[row.id]}</dt>
              <dd>${this.#sentence(row, facts)}</dd>
              <dd class="mark">${ready.marks[row.state]}</dd>
            </div>`,
        )}
      </dl>
      <div class="buttons">
        <button @click=${() => void this.#measure()}>${ready.again}</button>
        ${facts.persisted ? null : html`<button @click=${() => void this.#persist()}>${ready.stay}</button>`}
        ${facts.where === 'fix' ? null : html`<button @click=${() => startPosition(this.store)}>${ready.askPosition}</button>`}
      </div>`;
  }

  #facts(): ReadyFacts {
    const { round, plan, planOf, site } = this.state;
    const { where, offline, logState } = round;
    const boxes = roundsOf(this.state).reduce((sum, one) => sum + one.stops.length, 0);
    return {
      ...this.measured,
      offline: offline === 'not-built' ? 'not-possible' : offline,
      built: offline !== 'not-built',
      hash: round.hash,
      boxes,
      planIsCurrent: round.shared !== null || (plan !== null && planOf === site),
      visitsKept: logState === 'memory' || logState === 'not-read' ? 'memory' : 'kept',
      where: where.at === 'fix' ? 'fix' : where.at === 'denied' ? 'denied' : where.at === 'off' ? 'not-asked' : 'none',
    };
  }

  #sentence({ id, state: how }: ReadyRow, facts: ReadyFacts): string {
    const { ready } = this.words.round;
    const { persisted, used, room, hash, boxes, appSize: size } = facts;
    if (id === 'app') return this.#app(size);
    if (id === 'plan')
      return boxes === 0
        ? ready.planNone
        : how === 'yes'
          ? ready.plan(hash, boxes)
          : `${ready.plan(hash, boxes)} ${ready.planOld}`;
    if (id === 'visits') return how === 'yes' ? ready.visits(this.state.round.log.length) : ready.visitsMemory;
    if (id === 'storage') return persisted === null ? ready.storeUnknown : persisted ? ready.stored : ready.notStored;
    if (id === 'room') {
      if (room === null || used === null) return ready.storeUnknown;
      const free = sizeText(Math.max(0, room - used));
      return how === 'yes' ? ready.room(free, sizeText(used)) : ready.roomTight(free);
    }
    if (id === 'picture') return this.#picture(facts.picture);
    return ready.position[facts.where];
  }

  #picture(facts: PictureFacts | null): string {
    const { ready } = this.words.round;
    if (facts === null) return ready.reading;
    const { kept, bytes, lost, servers, files } = facts;
    const said = [
      ...(kept > 0 ? [ready.pictureKept(kept, sizeText(bytes))] : []),
      ...(lost > 0 ? [ready.pictureLost(lost)] : []),
      ...(servers.length > 0 ? [ready.pictureServed(servers)] : []),
      ...(files.length > 0 ? [ready.pictureTiles(files)] : []),
    ];
    return said.length > 0 ? said.join(' ') : ready.pictureNone;
  }

  #app(size: number | null): string {
    const { app, appSize: words } = this.words.round.ready;
    const { offline } = this.state.round;
    const told = size === null ? '' : words(sizeText(size));
    if (offline === 'ready' || offline === 'update-waiting') return app[offline](told);
    return app[offline];
  }

  async #measure(): Promise<void> {
    const estimate = await navigator.storage?.estimate?.().catch(() => null);
    const persisted = (await navigator.storage?.persisted?.().catch(() => null)) ?? null;
    this.measured = {
      persisted,
      used: estimate?.usage ?? null,
      room: estimate?.quota ?? null,
      appSize: await appSize().catch(() => null),
      picture: await this.#pictures(),
    };
  }

  async #pictures(): Promise<PictureFacts> {
    await readPictures(this.store);
    return pictureFacts(this.state.pictures.list, picturesOf(this.store));
  }

  async #persist(): Promise<void> {
    await navigator.storage?.persist?.().catch(() => false);
    await this.#measure();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-round-ready': RoundReady;
  }
}
