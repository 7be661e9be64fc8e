/** The keyboard's cross on the map: arrows move it, Space puts a corner. One focusable thing; nothing is said on every step. */
import type { LonLat } from '../../../site/types.ts';
import type { MapHost } from '../host.ts';

/** Px a step moves the cross: an arrow, and with Shift (ours). */
const steps = { coarse: 16, fine: 2 };
/** The map follows when the cross comes this near to its edge, px. */
const margin = 48;

export interface CrossEvents {
  /** Where it stands now; null when it was put away. */
  point(at: LonLat | null): void;
  /** Space: a corner, or the thing under it. */
  put(at: LonLat, x: number, y: number): void;
}

export class Cross {
  readonly #host: MapHost;
  readonly #events: CrossEvents;
  readonly #element = document.createElement('div');
  #x = 0;
  #y = 0;

  constructor(host: MapHost, events: CrossEvents) {
    this.#host = host;
    this.#events = events;
    const { land } = host.store.state.words;
    const element = this.#element;
    element.tabIndex = 0;
    element.className = 'cross';
    element.setAttribute('role', 'application');
    element.setAttribute('aria-label', land.crossLabel);
    element.append(drawCross());
    element.addEventListener('keydown', (event) => this.#key(event));
    host.map.getContainer().append(element);
    const { left = 0, right = 0, top = 0, bottom = 0 } = host.map.getPadding();
    const box = host.map.getContainer().getBoundingClientRect();
    this.#x = (left + box.width - right) / 2;
    this.#y = (top + box.height - bottom) / 2;
    this.#show();
    element.focus();
  }

  remove(): void {
    this.#element.remove();
    this.#events.point(null);
  }

  /** Ink of the theme. */
  paint(): void {
    const { ink } = this.#host;
    this.#element.style.cssText = `position:absolute;width:44px;height:44px;margin:-22px 0 0 -22px;pointer-events:none;z-index:2;left:${this.#x}px;top:${this.#y}px;--cross:${ink.ink};--cross-halo:${ink.halo};border-radius:50%;outline-offset:-3px`;
  }

  get at(): LonLat {
    const { lng, lat } = this.#host.map.unproject([this.#x, this.#y]);
    return [lng, lat];
  }

  #key(event: KeyboardEvent): void {
    const step = event.shiftKey ? steps.fine : steps.coarse;
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (way) this.#moveBy(way[0]! * step, way[1]! * step);
    else if (event.key === ' ') this.#events.put(this.at, this.#x, this.#y);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  #moveBy(dx: number, dy: number): void {
    const { map } = this.#host;
    const box = map.getContainer().getBoundingClientRect();
    const { left = 0, right = 0, top = 0, bottom = 0 } = map.getPadding();
    const low = { x: left + margin, y: top + margin };
    const high = { x: box.width - right - margin, y: box.height - bottom - margin };
    const [x, y] = [this.#x + dx, this.#y + dy];
    this.#x = Math.max(Math.min(low.x, high.x), Math.min(Math.max(low.x, high.x), x));
    this.#y = Math.max(Math.min(low.y, high.y), Math.min(Math.max(low.y, high.y), y));
    if (x !== this.#x || y !== this.#y) map.panBy([x - this.#x, y - this.#y], { duration: 0 });
    this.#show();
  }

  #show(): void {
    this.paint();
    this.#events.point(this.at);
  }
}

function drawCross(): SVGElement {
  const space = 'http://www.w3.org/2000/svg';
  const svg = document.createElementNS(space, 'svg');
  svg.setAttribute('viewBox', '-22 -22 44 44');
  svg.setAttribute('width', '44');
  svg.setAttribute('height', '44');
  svg.setAttribute('aria-hidden', 'true');
  for (const [color, width] of [
    ['var(--cross-halo)', '6'],
    ['var(--cross)', '2.5'],
  ] as const) {
    const path = document.createElementNS(space, 'path');
    path.setAttribute('d', 'M-20 0H-5M5 0H20M0 -20V-5M0 5V20');
    path.setAttribute('stroke', color);
    path.setAttribute('stroke-width', width);
    path.setAttribute('stroke-linecap', 'round');
    svg.append(path);
  }
  return svg;
}
