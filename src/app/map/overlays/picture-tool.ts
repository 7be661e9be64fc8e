/** The picture's handles on the map: four corners as buttons that are dragged or moved by arrow keys, and control points. */
import { Marker } from 'maplibre-gl';
import { addTie, moveCorner, placedPicture } from '../../actions/picture-place.ts';
import type { PlacedPicture } from '../../picture-state.ts';
import type { AppState } from '../../state.ts';
import type { MapHost, Overlay } from '../host.ts';

/** Pixels an arrow key moves a corner, and with Shift. */
const step = 1;
const stride = 10;
const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

export function pictureTool(host: MapHost): Overlay {
  let markers: Marker[] = [];
  let key = '';
  const clear = () => {
    for (const marker of markers) marker.remove();
    markers = [];
  };
  return {
    update(state, before) {
      if (
        before &&
        state.pictures === before.pictures &&
        state.ground === before.ground &&
        state.theme === before.theme
      )
        return;
      const picture = state.ground === 'photo' ? placedPicture(state, state.pictures.tool?.id) : null;
      const now = picture ? wantedKey(state, picture) : '';
      if (now !== key) {
        clear();
        key = now;
        const moves = state.pictures.tool?.does === 'corners';
        if (picture && moves) bringIntoSight(host, picture);
        if (picture) markers = moves ? corners(host, picture) : ties(host, picture);
      } else if (picture && state.pictures.tool?.does === 'corners')
        for (const [i, marker] of markers.entries()) marker.setLngLat([...picture.corners[i]!]);
    },
    press({ at }) {
      const { tool } = host.store.state.pictures;
      if (tool?.does === 'tie' && tool.pixel !== null) addTie(host.store, tool.id, { pixel: tool.pixel, ground: at });
      return tool !== null;
    },
    remove: clear,
  };
}

/** Handles are made anew when the tool, the picture or its points change, not while a corner moves. */
function wantedKey({ pictures, theme }: AppState, { id, ties: points }: PlacedPicture): string {
  return JSON.stringify([pictures.tool?.does, id, theme, pictures.tool?.does === 'tie' ? points : null]);
}

/** A corner under the notebook, a slip or outside the window could not be taken hold of: then the map moves back. */
function bringIntoSight({ map }: MapHost, { corners }: PlacedPicture): void {
  const { clientWidth, clientHeight } = map.getContainer();
  const { left, right, top, bottom } = map.getPadding();
  const seen = corners.every((corner) => {
    const { x, y } = map.project([...corner]);
    return x > (left ?? 0) && x < clientWidth - (right ?? 0) && y > (top ?? 0) && y < clientHeight - (bottom ?? 0);
  });
  if (seen) return;
  const [lons, lats] = [corners.map(([lon]) => lon), corners.map(([, lat]) => lat)];
  const box: [number, number, number, number] = [
    Math.min(...lons),
    Math.min(...lats),
    Math.max(...lons),
    Math.max(...lats),
  ];
  map.fitBounds(box, { padding: 50, duration: 0 });
}

function corners(host: MapHost, picture: PlacedPicture): Marker[] {
  const { words } = host.store.state;
  return picture.corners.map((corner, i) => {
    const element = handle(host, 'button', words.pictures.cornerShort[i]!, words.pictures.corner[i]!);
    const marker = new Marker({ element, draggable: true }).setLngLat([...corner]).addTo(host.map);
    // The map names its own markers; ours have names already.
    element.setAttribute('aria-label', words.pictures.corner[i]!);
    const put = (last: boolean) => {
      const { lng, lat } = marker.getLngLat();
      moveCorner(host.store, picture.id, i, [lng, lat], last);
    };
    marker.on('drag', () => put(false));
    marker.on('dragend', () => put(true));
    element.addEventListener('keydown', (event) => {
      const way = arrows[event.key];
      if (!way) return;
      event.preventDefault();
      event.stopPropagation();
      const by = event.shiftKey ? stride : step;
      const at = host.map.project(marker.getLngLat());
      marker.setLngLat(host.map.unproject([at.x + way[0] * by, at.y + way[1] * by]));
      put(true);
    });
    return marker;
  });
}

function ties(host: MapHost, picture: PlacedPicture): Marker[] {
  return picture.ties.map(({ ground }, i) => {
    const element = handle(host, 'div', String(i + 1), '');
    element.setAttribute('aria-hidden', 'true');
    return new Marker({ element }).setLngLat([...ground]).addTo(host.map);
  });
}

function handle({ ink }: MapHost, tag: 'button' | 'div', word: string, label: string): HTMLElement {
  const element = document.createElement(tag);
  element.textContent = word;
  if (label) element.setAttribute('aria-label', label);
  Object.assign(element.style, {
    minWidth: tag === 'button' ? '44px' : '26px',
    height: tag === 'button' ? '44px' : '26px',
    padding: '0 6px',
    border: `2px solid ${ink.ink}`,
    borderRadius: tag === 'button' ? '5px' : '13px',
    background: ink.paper,
    color: ink.ink,
    font: '700 13px/1 serif',
    textAlign: 'center',
    display: 'grid',
    placeContent: 'center',
    cursor: tag === 'button' ? 'move' : 'default',
  });
  return element;
}
