/** Drawing on a real map: mouse, corners, snapping, crossings, handles, and what is refused. */
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { finishShape, putCorner, takeCornerBack, takeTool } from '../../../src/app/actions/land-draw.ts';
import { usePlace } from '../../../src/app/actions/land-offer.ts';
import { choose, setLand } from '../../../src/app/actions/land-state.ts';
import { runTool, toolsFor } from '../../../src/app/actions/land-tools.ts';
import { openText } from '../../../src/app/actions/open.ts';
import '../../../src/app/elements/app/app.ts';
import type { App } from '../../../src/app/elements/app/app.ts';
import { firstLand } from '../../../src/app/land-state.ts';
import type { LonLat } from '../../../src/site/types.ts';
import { smallSite } from '../sites.ts';

let app: App;

async function until<T>(what: () => T | null | undefined | false, words: string): Promise<T> {
  const end = Date.now() + 20_000;
  for (;;) {
    const found = what();
    if (found) return found;
    if (Date.now() > end) throw new Error(`waited 20 s for: ${words}`);
    await new Promise((r) => setTimeout(r, 25));
  }
}

const store = () => app.store;
const land = () => app.store.state.land;
const site = () => app.store.state.site!;
const map = () => app.renderRoot.querySelector('mp-map')!.host!.map;
const frame = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));

/** A pointer event on the map at a place of the earth (or px from it). */
function point(type: string, at: LonLat, more: PointerEventInit = {}, dx = 0, dy = 0): void {
  const canvas = map().getCanvas();
  const box = canvas.getBoundingClientRect();
  const p = map().project(at);
  const where = { clientX: box.x + p.x + dx, clientY: box.y + p.y + dy };
  canvas.dispatchEvent(
    new PointerEvent(type, {
      bubbles: true,
      cancelable: true,
      isPrimary: true,
      pointerId: 1,
      pointerType: 'mouse',
      button: type === 'pointermove' ? -1 : 0,
      buttons: type === 'pointerup' ? 0 : 1,
      ...where,
      ...more,
    }),
  );
}

function press(at: LonLat, more: PointerEventInit = {}, dx = 0, dy = 0): void {
  point('pointermove', at, { buttons: 0, ...more }, dx, dy);
  point('pointerdown', at, more, dx, dy);
  point('pointerup', at, more, dx, dy);
}

/** Metres east and north of the middle of the small site. */
const degree = 111_195;
const at = (x: number, y: number): LonLat => [(x / degree) * 1.305, 40 + y / degree];

beforeAll(async () => {
  localStorage.setItem('meadowpost walk seen', 'yes');
  document.body.style.margin = '0';
  location.hash = '#site=none&place=land';
  app = document.createElement('mp-app');
  document.body.append(app);
  await until(() => app.hasAttribute('data-map'), 'the map');
}, 60_000);
afterAll(() => app.remove());
beforeEach(async () => {
  app.store.set({ selection: null, place: 'land', messages: [], land: firstLand });
  await openText(app.store, 'test', smallSite);
  await until(
    () =>
      app.renderRoot
        .querySelector('mp-notebook')
        ?.shadowRoot?.querySelector('mp-place-land')
        ?.shadowRoot?.querySelector('mp-page'),
    'the Land place',
  );
  await until(() => map().getSource('desk'), 'the drawing tools');
  await frame();
});

describe('drawing with the mouse', () => {
  it('makes an area of the corners pressed, closed by pressing the first again', async () => {
    takeTool(store(), { does: 'draw', kind: 'brush' });
    for (const corner of [at(-100, -50), at(-60, -50), at(-60, -20)]) press(corner);
    expect(land().corners.length).toBe(3);
    press(at(-100, -50), {}, 3, -3);
    const made = site().features.at(-1)!;
    expect(made.kind).toBe('brush');
    expect(made.geometry!.type).toBe('Polygon');
    expect((made.geometry!.coordinates as LonLat[][])[0]!.length).toBe(4);
    expect(store().state.selection).toEqual({ of: 'feature', id: made.id });
    expect(store().state.past.length).toBe(1);
  });

  it('pulls a corner onto a drawn one, and leaves it alone with Alt or with the switch off', () => {
    const grass = site().features.find((f) => f.id === 'grass')!;
    const corner = (grass.geometry!.coordinates as LonLat[][])[0]![2] as LonLat;
    takeTool(store(), { does: 'draw', kind: 'path' });
    press(corner, {}, 6, 5);
    expect(land().corners[0]).toEqual([corner[0], corner[1]]);
    press(corner, { altKey: true }, -7, 40);
    press(corner, { altKey: true }, 6, 5);
    expect(land().corners[2]).not.toEqual([corner[0], corner[1]]);
    setLand(store(), { snap: false, corners: [] });
    press(corner, {}, 6, 5);
    expect(land().corners[0]).not.toEqual([corner[0], corner[1]]);
  });

  it('draws lines and points of a kind, points one after the other', () => {
    takeTool(store(), { does: 'draw', kind: 'stream' });
    press(at(-200, -100));
    press(at(-150, -90));
    press(at(-150, -90));
    expect(site().features.at(-1)!.kind).toBe('stream');
    takeTool(store(), { does: 'draw', kind: 'tree' });
    press(at(-100, 0));
    press(at(-80, 10));
    expect(
      site()
        .features.slice(-2)
        .map((f) => f.kind),
    ).toEqual(['tree', 'tree']);
    expect(land().tool).toEqual({ does: 'draw', kind: 'tree' });
  });

  it('draws a circle by its middle and rim', () => {
    takeTool(store(), { does: 'circle', kind: 'woods' });
    press(at(-100, -50));
    press(at(-80, -50));
    const ring = (site().features.at(-1)!.geometry!.coordinates as LonLat[][])[0]!;
    expect(ring.length).toBe(65);
    for (const [lon, lat] of ring)
      expect(Math.hypot(((lon - at(-100, -50)[0]) / 1.305) * degree, (lat - at(-100, -50)[1]) * degree)).toBeCloseTo(
        20,
        -0.5,
      );
  });

  it('shows a crossing with its place, and refuses to finish until it is gone', async () => {
    takeTool(store(), { does: 'draw', kind: 'woods' });
    setLand(store(), { snap: false });
    for (const corner of [at(-100, -50), at(-60, -50), at(-100, -20), at(-60, -20)]) press(corner);
    expect(finishShape(store())).toBe(false);
    expect(land().trouble!.sentence).toContain('crosses itself');
    const [lon, lat] = land().trouble!.at!;
    expect(lon).toBeCloseTo(at(-80, 0)[0], 4);
    expect(lat).toBeCloseTo(at(0, -35)[1], 4);
    expect(land().corners.length).toBe(4);
    takeCornerBack(store());
    expect(finishShape(store())).toBe(true);
  });

  it('never makes an area of two corners, and keeps what was put', () => {
    takeTool(store(), { does: 'draw', kind: 'woods' });
    press(at(-100, -50));
    press(at(-60, -50));
    const before = site();
    expect(finishShape(store())).toBe(false);
    expect(site()).toBe(before);
    expect(land().corners.length).toBe(2);
    expect(land().trouble!.sentence).toContain('at least 3 corners');
  });

  it.each([
    [[10, 86] as LonLat, '85 degrees'],
    [[179.995, 10] as LonLat, '180 degree meridian'],
    [[Number.NaN, 10] as LonLat, 'no place on earth'],
  ])('refuses a corner at %s and keeps the shape', (wrong, words) => {
    takeTool(store(), { does: 'draw', kind: 'woods' });
    press(at(-100, -50));
    putCorner(store(), wrong);
    expect(land().trouble!.sentence).toContain(words);
    expect(land().corners.length).toBe(1);
  });
});

describe('changing what is drawn', () => {
  const ringOf = (id: string) => (site().features.find((f) => f.id === id)!.geometry!.coordinates as LonLat[][])[0]!;

  /** Drags a handle: down, several moves, up. */
  async function drag(from: LonLat, dx: number, dy: number): Promise<void> {
    point('pointermove', from, { buttons: 0 });
    point('pointerdown', from);
    for (const share of [0.5, 0.8, 1]) {
      point('pointermove', from, {}, dx * share, dy * share);
      await frame();
    }
    point('pointerup', from, { altKey: true }, dx, dy);
    await frame();
  }

  it('drags a corner, and the neighbor follows along the shared border', async () => {
    choose(store(), 'grass');
    await frame();
    const corner = ringOf('grass')[2]!;
    expect(ringOf('meadow').some(([x, y]) => x === corner[0] && y === corner[1])).toBe(true);
    setLand(store(), { snap: false });
    await drag(corner, 12, 18);
    const moved = ringOf('grass')[2]!;
    expect(moved).not.toEqual(corner);
    expect(ringOf('meadow').some(([x, y]) => x === moved[0] && y === moved[1])).toBe(true);
    expect(store().state.past.length).toBe(1);
  });

  it('leaves the neighbor where it is with shared borders off', async () => {
    choose(store(), 'grass');
    setLand(store(), { shared: false, snap: false });
    await frame();
    const corner = ringOf('grass')[2]!;
    await drag(corner, 12, 18);
    expect(ringOf('grass')[2]).not.toEqual(corner);
    expect(ringOf('meadow').some(([x, y]) => x === corner[0] && y === corner[1])).toBe(true);
  });

  it('puts a dragged corner back, with the reason, when the outline would cross itself', async () => {
    choose(store(), 'woods');
    setLand(store(), { snap: false });
    await frame();
    const before = site();
    const corner = ringOf('woods')[0]!;
    const [a, b] = [map().project(corner), map().project(at(-150, 190))];
    await drag(corner, b.x - a.x, b.y - a.y);
    expect(site()).toBe(before);
    expect(land().trouble!.sentence).toMatch(/cross/);
  });

  it('adds a corner at a middle handle and takes it away again with Delete corner', async () => {
    choose(store(), 'grass');
    await frame();
    const [a, b] = [ringOf('grass')[0]!, ringOf('grass')[1]!];
    press([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
    expect(ringOf('grass').length).toBe(6);
    expect(land().corner).toEqual({ chain: 0, corner: 1 });
    await frame();
    const place = app.renderRoot.querySelector('mp-notebook')!.shadowRoot!.querySelector('mp-place-land')!.shadowRoot!;
    const button = await until(
      () =>
        place
          .querySelector('mp-land-card')
          ?.shadowRoot?.querySelector('mp-land-corner')
          ?.shadowRoot?.querySelector<HTMLElement>('[data-delete-corner]'),
      'the button',
    );
    button.click();
    expect(ringOf('grass').length).toBe(5);
  });

  it('says why each tool cannot be used', () => {
    const grass = site().features.find((f) => f.id === 'grass')!;
    const rows = toolsFor(site(), grass, null, store().state.words);
    expect(rows.find((r) => r.name === 'square')!.why).toContain('building');
    expect(rows.find((r) => r.name === 'fill-hole')!.why).toContain('no hole');
    expect(rows.find((r) => r.name === 'split')!.why).toBe(null);
  });

  it('splits, cuts a hole, merges and makes a strip, each one step of the history', async () => {
    choose(store(), 'grass');
    runTool(store(), 'split');
    setLand(store(), { snap: false });
    press(at(-125, -170));
    press(at(-125, 120));
    expect(finishShape(store())).toBe(true);
    expect(site().features.filter((f) => f.kind === 'short-grass').length).toBe(2);
    const pieces = site()
      .features.filter((f) => f.kind === 'short-grass')
      .map((f) => f.id);
    choose(store(), pieces[0]!);
    runTool(store(), 'merge');
    await frame();
    const inOther = pieces[0] === 'grass' ? [at(-60, 0), at(-200, 0)] : [at(-200, 0), at(-60, 0)];
    press(inOther[0]!);
    if (land().tool) press(inOther[1]!);
    expect(site().features.filter((f) => f.kind === 'short-grass').length).toBe(1);
    runTool(store(), 'hole');
    for (const corner of [at(-100, -50), at(-60, -50), at(-60, -20)]) press(corner);
    expect(finishShape(store())).toBe(true);
    takeTool(store(), { does: 'draw', kind: 'stream' });
    press(at(-200, -100));
    press(at(-150, -90));
    finishShape(store());
    runTool(store(), 'buffer', 3, 'water');
    expect(site().features.at(-1)!.kind).toBe('water');
    expect(store().state.past.length).toBe(5);
  });

  it('warns of a post on a roof and leaves it there', () => {
    takeTool(store(), { does: 'draw', kind: 'building' });
    setLand(store(), { snap: false });
    for (const corner of [at(-100, -50), at(-60, -50), at(-60, -20), at(-100, -20)]) press(corner);
    finishShape(store());
    choose(store(), null);
    expect(usePlace(store(), at(-80, -35))).toBe(true);
    expect(site().features.at(-1)!.kind).toBe('post');
    expect(store().state.messages.find((m) => m.kind === 'trouble')!.sentence).toContain('stands on Building');
  });
});
