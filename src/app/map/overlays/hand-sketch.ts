/** The reasons of the post in the hand as an element over the map: while the hand moves the map itself is not painted again. */
import { render, svg } from 'lit';
import type { Point } from '../../../geometry/point.ts';
import type { Ink } from '../../theme.ts';
import type { MapHost } from '../host.ts';
import { dotLooks, haloOpacity, lineLooks, wordHalo, wordLooks, wordSize } from './reason-looks.ts';
import type { ReasonShape } from './reason-shapes.ts';

interface Shown {
  readonly shapes: readonly ReasonShape[];
  /** Where the post is, meters of the site's frame. */
  readonly middle: Point;
}

type ToPixels = (at: Point) => readonly [x: number, y: number];

export class HandSketch {
  readonly #host: MapHost;
  readonly #holder = document.createElement('div');
  #shown: Shown | null = null;

  constructor(host: MapHost) {
    this.#host = host;
    this.#holder.className = 'sketch';
    this.#holder.ariaHidden = 'true';
    host.map.getCanvas().after(this.#holder);
    host.map.on('move', this.#paint);
  }

  show(shown: Shown | null): void {
    this.#shown = shown;
    this.#paint();
  }

  remove(): void {
    this.#host.map.off('move', this.#paint);
    this.#holder.remove();
  }

  readonly #paint = (): void => {
    const toPixels = this.#shown && pixelsNear(this.#host, this.#shown.middle);
    const picture = toPixels && this.#shown ? drawing(this.#shown.shapes, toPixels, this.#host.ink) : null;
    if (picture || this.#holder.firstElementChild) render(picture, this.#holder);
  };
}

/** How meters near a place lie on the screen: over the reach of the reasons the map is flat to a hundredth of a px. */
function pixelsNear({ map, frame }: MapHost, middle: Point): ToPixels | null {
  if (!frame) return null;
  const reach = 100;
  const px = (x: number, y: number) => map.project(frame.toLonLat({ x: middle.x + x, y: middle.y + y }));
  const [home, east, north] = [px(0, 0), px(reach, 0), px(0, reach)];
  return ({ x, y }) => {
    const [e, n] = [(x - middle.x) / reach, (y - middle.y) / reach];
    return [
      home.x + e * (east.x - home.x) + n * (north.x - home.x),
      home.y + e * (east.y - home.y) + n * (north.y - home.y),
    ];
  };
}

function drawing(shapes: readonly ReasonShape[], toPixels: ToPixels, ink: Ink) {
  const of = (role: string) => shapes.filter((shape) => shape.role === role);
  return svg`<svg width="100%" height="100%">
    ${lineLooks.map(({ role, color, width, dash, halo, fill }) => {
      const path = of(role)
        .map(({ points }) => pathOf(points, toPixels))
        .join('');
      const dashes = dash?.map((part) => part * width).join(' ') ?? 'none';
      return svg`${fill ? svg`<path d=${path} fill=${ink[fill.color]} fill-opacity=${fill.opacity}></path>` : null}
        <path d=${path} fill="none" stroke=${ink.halo} stroke-width=${width + halo} stroke-opacity=${haloOpacity}></path>
        <path d=${path} fill="none" stroke=${ink[color]} stroke-width=${width} stroke-dasharray=${dashes}></path>`;
    })}
    ${dotLooks.flatMap(({ role, color, rim, radius, rimWidth }) =>
      of(role).map(({ points }) => {
        const [x, y] = toPixels(points[0] as Point);
        return svg`<circle cx=${x} cy=${y} r=${radius + rimWidth / 2} fill=${ink[color]} stroke=${ink[rim]} stroke-width=${rimWidth}></circle>`;
      }),
    )}
    ${wordLooks.flatMap(({ role, color, along }) =>
      of(role).map(({ points, words }) => {
        const [x, y] = along ? topOf(points, toPixels) : beside(toPixels(points[0] as Point));
        return svg`<text class=${along ? 'along' : ''} x=${x} y=${y} font-size=${wordSize} fill=${ink[color]}
          stroke=${ink.halo} stroke-width=${2 * wordHalo}>${words ?? ''}</text>`;
      }),
    )}
  </svg>`;
}

function pathOf(points: readonly Point[], toPixels: ToPixels): string {
  return points
    .map((point, i) => {
      const [x, y] = toPixels(point);
      return `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`;
    })
    .join('');
}

/** Words stand to the right of their place, and in the middle above a ring. */
function beside([x, y]: readonly [number, number]): [number, number] {
  return [x + 0.7 * wordSize, y + 0.35 * wordSize];
}

function topOf(points: readonly Point[], toPixels: ToPixels): readonly [number, number] {
  const [x, y] = points.map(toPixels).reduce((top, at) => (at[1] < top[1] ? at : top));
  return [x, y - 5];
}
