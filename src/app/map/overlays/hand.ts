/** Moving boxes and posts on the map by mouse or finger: the post follows the pointer with its score beside it. */
import { Marker } from 'maplibre-gl';
import { dropHand, giveUpHand, moveHand, takeHand } from '../../actions/hand.ts';
import { select } from '../../actions/select.ts';
import '../../elements/hand-disc/hand-disc.ts';
import type { LeftOut, PlannedBox } from '../../../plan-types.ts';
import type { AppState } from '../../state.ts';
import type { MapHost, Overlay } from '../host.ts';
import { landSource } from '../style.ts';
import { whenDrawn } from '../when-drawn.ts';
import { boxAt } from './boxes.ts';
import { takableAt } from './left-out.ts';

/** px the pointer goes before a press becomes a move: a finger trembles more. */
const slack = { mouse: 4, touch: 9 } as const;

/**
 * Where a browser tells of a move as soon as it knows, not only with the next picture, the score need not wait for that: a picture can be
 * late. Between two such moves at least so many ms (ours): fast mice tell of a thousand a second.
 */
const early = 'pointerrawupdate';
const soonest = 4;

interface Press {
  /** The map's top left corner in the window, px: asked for once, since the answer costs a layout of the whole page. */
  readonly corner: { readonly left: number; readonly top: number };
  readonly thing: PlannedBox | LeftOut;
  /** Where the pointer went down, and how far beside the post that was, px. */
  readonly x: number;
  readonly y: number;
  readonly offX: number;
  readonly offY: number;
  readonly kind: keyof typeof slack;
  moving: boolean;
}

export function hand(host: MapHost): Overlay {
  let press: Press | null = null;
  const stop = new AbortController();
  const { signal } = stop;
  const canvas = host.map.getCanvasContainer();
  const place = (event: PointerEvent, { left, top }: Press['corner']) => ({
    x: event.clientX - left,
    y: event.clientY - top,
  });
  const down = (event: PointerEvent) => {
    if (event.button !== 0 || !event.isPrimary || host.store.state.place !== 'posts') return;
    const corner = canvas.getBoundingClientRect();
    const at = place(event, corner);
    const thing = boxAt(host, at) ?? takableAt(host, at);
    if (!thing || !host.frame) return;
    const home = host.map.project(host.frame.toLonLat(thing.at));
    const kind = event.pointerType === 'mouse' ? 'mouse' : 'touch';
    press = { corner, thing, ...at, offX: home.x - at.x, offY: home.y - at.y, kind, moving: false };
    if ('card' in thing && kind === 'touch' && !isChosen(host.store.state, thing)) press = null;
    else {
      host.map.dragPan.disable();
      addEventListener(early, move as EventListener, { signal });
    }
  };
  let handled = 0;
  const move = (event: PointerEvent) => {
    if (!press || !host.frame || !event.isPrimary) return;
    if (event.type === early && event.timeStamp - handled < soonest) return;
    handled = event.timeStamp;
    const at = place(event, press.corner);
    if (!press.moving) {
      if (Math.hypot(at.x - press.x, at.y - press.y) < slack[press.kind]) return;
      press.moving = true;
      begin(host, press.thing);
    }
    const { lng, lat } = host.map.unproject([at.x + press.offX, at.y + press.offY]);
    moveHand(host.store, host.frame.toPlane([lng, lat]));
  };
  const end = (lost = false) => {
    if (!press) return;
    const { moving } = press;
    press = null;
    removeEventListener(early, move as EventListener);
    host.map.dragPan.enable();
    if (moving) lost ? giveUpHand(host.store) : void dropHand(host.store);
  };
  canvas.addEventListener('pointerdown', down, { signal, capture: true });
  addEventListener('pointermove', move, { signal });
  addEventListener('pointerup', () => end(), { signal });
  addEventListener('pointercancel', () => end(true), { signal });
  const giveUp = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !press?.moving) return;
    event.stopPropagation();
    end(true);
  };
  addEventListener('keydown', giveUp, { signal, capture: true });
  const disc = makeDisc(host);
  return {
    update: (state, before) => {
      if (state.posts.hand !== before?.posts.hand || state.theme !== before?.theme) disc.show(state);
    },
    remove() {
      stop.abort();
      disc.remove();
    },
  };
}

function isChosen({ selection }: AppState, thing: PlannedBox): boolean {
  return selection?.of === 'box' && selection.number === thing.number;
}

/** What is moved is chosen, so that its card and reasons are seen. */
function begin(host: MapHost, thing: PlannedBox | LeftOut): void {
  takeHand(host.store, thing);
  select(host.store, 'card' in thing ? { of: 'box', number: thing.number } : { of: 'post', id: thing.post });
}

/** The disc in the hand is an element: it follows the pointer without a new picture of the map, and stays until the map shows what was put down. */
function makeDisc(host: MapHost) {
  const element = document.createElement('mp-hand-disc');
  const marker = new Marker({ element, anchor: 'center' });
  let shown = false;
  let forget = () => {};
  const putAway = () => {
    forget = whenDrawn(host.map, ['boxes', landSource], () => marker.remove());
    shown = false;
  };
  return {
    show({ posts, plan, words }: AppState) {
      const { hand: held } = posts;
      const at = held && host.toLonLat(held.at);
      if (!held || !at) {
        if (shown) putAway();
        return;
      }
      forget();
      const box = plan?.boxes.find((b) => b.post === held.post);
      element.look = {
        label: box ? String(box.number) : '',
        card: held.card,
        before: held.before,
        forbidden: held.forbidden,
        standing: box?.state === 'standing',
        words: words.posts,
      };
      marker.setLngLat([...at]);
      if (!shown) marker.addTo(host.map);
      shown = true;
    },
    remove() {
      forget();
      marker.remove();
    },
  };
}
