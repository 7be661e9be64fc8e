/** What the phone lends the walker – position, compass, wake lock, camera, share sheet – each as given, refused and missing. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import '../../../src/app/elements/place-round/place-round.ts';
import { logOf, setRound, useLog } from '../../../src/app/actions/visit-log.ts';
import type { RoundPage } from '../../../src/app/round-state.ts';
import { visitLog } from '../../../src/app/storage/visit-log.ts';
import { type Alone, drawn, standAlone, until } from '../place.ts';
import { here, meadow } from './meadow.ts';

let alone: Alone;
const restore: (() => void)[] = [];

/** Puts something in the navigator's place until the test is over. */
function lend(name: string, value: unknown, of: object = navigator): void {
  const own = Object.getOwnPropertyDescriptor(of, name);
  Object.defineProperty(of, name, { value, configurable: true, writable: true });
  restore.push(() => (own ? Object.defineProperty(of, name, own) : Reflect.deleteProperty(of, name)));
}

type Hear = (answer: object) => void;
/** A device that gives this place, or refuses with this code (1 = not allowed). */
function position(answer: { accuracy: number; lon?: number; lat?: number } | { code: number }): void {
  lend('geolocation', {
    watchPosition(hear: Hear, deny: Hear) {
      if ('code' in answer) queueMicrotask(() => deny({ code: answer.code, PERMISSION_DENIED: 1 }));
      else {
        const { accuracy, lon = here[0], lat = here[1] } = answer;
        const coords = { longitude: lon, latitude: lat, accuracy, heading: null, speed: null };
        queueMicrotask(() => hear({ coords, timestamp: Date.now() }));
      }
      return 1;
    },
    clearWatch: () => undefined,
    getCurrentPosition: () => undefined,
  });
}

let turn = 0;
function start(page: RoundPage = 'walk'): void {
  const name = `test-device-${Date.now()}-${turn++}`;
  alone = standAlone('mp-place-round', meadow());
  useLog(alone.store, visitLog(null, name));
  restore.push(() => void indexedDB.deleteDatabase(name));
  setRound(alone.store, { page });
}
const press = async (selector: string, words = '') =>
  (await until(() => alone.find<HTMLButtonElement>(selector, words), `${selector} ${words}`)).click();

beforeEach(() => position({ code: 3 }));
afterEach(() => {
  alone?.remove();
  for (const back of restore.splice(0).reverse()) back();
});

describe('the position', () => {
  it('that is not allowed is said once, and the walk goes on by the list', async () => {
    position({ code: 1 });
    start();
    await until(() => alone.text().includes('Position is not allowed here'), 'the refusal');
    expect(alone.text()).toContain('the list works without it');
    expect(alone.text()).toContain('Box 1');
    await press('.foot button', 'Skip');
    await until(() => alone.text().includes('Box 2'), 'the next box');
  });
  it('inside its error circle names the box and hides the arrow', async () => {
    position({ accuracy: 9, lon: here[0] + 0.00004 });
    start();
    await until(() => alone.text().includes('Within GPS error of box 1'), 'the box');
    expect(alone.find('.slip svg')).toBeNull();
  });
  it('that is poor says not to trust distance and arrow', async () => {
    position({ accuracy: 80, lat: here[1] + 0.01 });
    start();
    await until(() => alone.text().includes('do not trust distance and arrow'), 'the warning');
  });
});

describe('the compass', () => {
  const arrow = () => alone.find('.slip svg')?.querySelectorAll('g')[1]?.getAttribute('transform') ?? '';
  it('turns the arrow with the phone, and says which north it means', async () => {
    position({ accuracy: 5, lat: here[1] - 0.002 });
    start();
    await until(() => arrow() !== '', 'the arrow');
    expect(alone.text()).toContain('No compass: the arrow assumes north is up.');
    const straight = Number(/-?[\d.]+/.exec(arrow())?.[0]);
    // W3C Device Orientation: alpha turns counterclockwise, so alpha 270 is a phone that looks east.
    dispatchEvent(new DeviceOrientationEvent('deviceorientationabsolute', { alpha: 270, absolute: true }));
    await until(() => alone.text().includes('Arrow follows your phone'), 'the compass');
    const turned = Number(/-?[\d.]+/.exec(arrow())?.[0]);
    expect((straight - turned + 360) % 360).toBeCloseTo(90, 3);
  });
});

describe('the screen', () => {
  const tick = async () => (await until(() => alone.find<HTMLInputElement>('.awake input'), 'the box to tick')).click();
  it('is kept on while wanted, and again after the window was away', async () => {
    const asked: string[] = [];
    let lock = new EventTarget();
    lend('wakeLock', {
      request: async (kind: string) => {
        asked.push(kind);
        lock = Object.assign(new EventTarget(), { release: async () => undefined });
        return lock;
      },
    });
    start('list');
    await tick();
    await until(() => alone.store.state.round.awake === 'on', 'the lock');
    lock.dispatchEvent(new Event('release'));
    document.dispatchEvent(new Event('visibilitychange'));
    await until(() => asked.length === 2, 'the lock again');
    expect(asked).toEqual(['screen', 'screen']);
    await tick();
    await until(() => alone.store.state.round.awake === 'off', 'the lock let go');
  });
  it('that cannot be kept on says so', async () => {
    lend('wakeLock', { request: () => Promise.reject(new DOMException('battery', 'NotAllowedError')) });
    start('list');
    await tick();
    await until(() => alone.text().includes('does not let a page keep the screen on'), 'the words');
  });
});

describe('a photo', () => {
  const picture = async () => {
    const canvas = new OffscreenCanvas(3200, 2400);
    canvas.getContext('2d')!.fillRect(0, 0, 3200, 2400);
    return new File([await canvas.convertToBlob({ type: 'image/png' })], 'IMG_1.png', { type: 'image/png' });
  };
  const give = async (file: File) => {
    await press('button[data-state=eggs]');
    const input = await until(() => alone.find<HTMLInputElement>('input[capture]'), 'the camera');
    const files = new DataTransfer();
    files.items.add(file);
    input.files = files.files;
    input.dispatchEvent(new Event('change'));
  };
  it('is made smaller, kept on this device under the visit’s name for it, and never leaves in a file', async () => {
    start();
    await give(await picture());
    await until(() => alone.text().includes('Photo kept on this device.'), 'the photo');
    await press('button.keep');
    const visit = await until(() => alone.store.state.round.log.find((one) => one.photo !== null), 'the visit');
    const kept = await (await logOf(alone.store)).photo(visit.photo!);
    const bitmap = await createImageBitmap(kept!);
    expect([kept!.type, bitmap.width, bitmap.height]).toEqual(['image/jpeg', 1600, 1200]);
    setRound(alone.store, { arrived: 'p1' });
    const { select } = await import('../../../src/app/actions/select.ts');
    select(alone.store, { of: 'box', number: 1 });
    setRound(alone.store, { arrived: 'p1' });
    await press(`[data-photo="${visit.photo}"]`);
    const shown = await until(() => alone.find<HTMLImageElement>('img'), 'the photo again');
    await until(() => shown.naturalWidth === 1600, 'the picture');
    const { visitsFile } = await import('../../../src/app/actions/round-share.ts');
    expect(visitsFile(alone.store.state).text).not.toContain(visit.photo!);
  });
  it('that cannot be read costs neither words nor the visit', async () => {
    start();
    await give(new File(['no picture'], 'x.jpg', { type: 'image/jpeg' }));
    const said = await until(() => alone.store.state.messages.find((one) => one.kind === 'trouble'), 'the words');
    expect(said.sentence).toContain('The photo was not kept: this is no picture the browser can read');
    expect(alone.store.state.round.draft).toMatchObject({ state: 'eggs', photo: null });
  });
});

describe('the share sheet', () => {
  const handed: File[] = [];
  const sheet = (answer: () => Promise<void>) => {
    handed.length = 0;
    lend('canShare', ({ files }: { files: File[] }) => files.every((file) => file.type === 'text/plain'));
    lend('share', ({ files }: { files: File[] }) => {
      handed.push(...files);
      return answer();
    });
  };
  const send = async () => {
    start('share');
    await until(() => alone.find('[data-places=exact]'), 'the question');
    expect(alone.find('button', 'Send the round')).toBeNull();
    await press('[data-places=none]');
    await press('button.filled', 'Send the round');
  };
  it('gets the round as asked: here without any place', async () => {
    sheet(async () => undefined);
    await send();
    await until(() => alone.text().includes('Handed to the share sheet.'), 'the words');
    expect(handed.map(({ name, type }) => [name, type])).toEqual([['test-meadow-round-1.json.txt', 'text/plain']]);
    const text = await handed[0]!.text();
    expect(JSON.parse(text)).toMatchObject({ places: 'none', boxes: [{ number: 1 }, { number: 2 }, { number: 3 }] });
    expect(text).not.toContain('"place"');
  });
  it('closed by the person says that nothing was sent', async () => {
    sheet(() => Promise.reject(new DOMException('closed', 'AbortError')));
    await send();
    await until(() => alone.text().includes('Not sent.'), 'the words');
  });
  it('that fails saves the file instead', async () => {
    sheet(() => Promise.reject(new DOMException('broken', 'DataError')));
    const saved: string[] = [];
    lend(
      'click',
      function (this: HTMLAnchorElement) {
        saved.push(this.download);
      },
      HTMLAnchorElement.prototype,
    );
    await send();
    await until(() => alone.text().includes('Saved as test-meadow-round-1.json.'), 'the words');
    expect(saved).toEqual(['test-meadow-round-1.json']);
  });
  it('is not offered where the device has none: the file is saved', async () => {
    lend('canShare', undefined);
    start('share');
    await press('[data-places=exact]');
    await drawn();
    expect(alone.find('button', 'Send the round')).toBeNull();
    expect(alone.find<HTMLButtonElement>('button', 'Save as a file')!.disabled).toBe(false);
  });
});
