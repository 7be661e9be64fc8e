/** The site file on a person's own disk: written with its seal, read with the seal looked at. */

import { findSeal, withSeal, withSlot } from '../../site/seal.ts';
import type { Site } from '../../site/types.ts';
import { canonicalText, writeSite } from '../../site/write.ts';
import { sha256 } from '../digest.ts';
import { readSiteText } from '../read-site-text.ts';
import type { Store } from '../store.ts';
import { say } from './say.ts';
import { freshId } from './shelf-name.ts';
import { exportedKey, openKept } from './shelf-open.ts';
import { renamedText } from './shelf-rename.ts';

const megabyte = 1_000_000;
/** Files larger than this are refused, and larger than the other are warned about, before they are read (ours). */
const most = 150 * megabyte;
const large = 25 * megabyte;

/** The text of a site's file with its own hash in it. */
export async function sealedText(site: Site): Promise<string> {
  const text = writeSite(site);
  return sealed(findSeal(withSlot(text)) ? text : canonicalText(site));
}

/** Any site text with its seal made anew. */
export async function sealed(text: string): Promise<string> {
  const open = withSlot(text);
  const found = findSeal(open);
  return found ? withSeal(open, await sha256(found.hashed)) : text;
}

/** Whether a text is what its seal says; true when it has none. */
export async function sealHolds(text: string): Promise<boolean> {
  const found = findSeal(text);
  return !found || (await sha256(found.hashed)) === found.seal;
}

/** Gives the open site to the browser as a download. */
export async function downloadSite(store: Store): Promise<void> {
  const { site } = store.state;
  if (!site) return;
  const file = fileName(site.settings.name);
  give(file, await sealedText(site));
  await exported(store);
  say(store, 'tell', store.state.words.library.downloaded(file));
}

/** Gives any text of a site to the browser as a download. */
export async function downloadText(name: string, text: string): Promise<void> {
  give(fileName(name), await sealed(text));
}

/**
 * Puts a file on the shelf as a site of its own and opens it; a damaged one is said to be so and never takes the place of a good one.
 * Returns the text of a whole file, null where it is damaged or was not opened.
 */
export async function openFile(store: Store, file: File): Promise<string | null> {
  const { library } = store.state.words;
  try {
    const size = Math.round(file.size / megabyte);
    if (file.size > most) throw new Error(library.tooBig(size));
    if (file.size > large) say(store, 'tell', library.big(size));
    const text = await file.text();
    const { site, issues } = await readSiteText(text, file.name);
    if (!site) throw new Error(issues.find((i) => i.severity === 'error')?.sentence ?? '');
    const whole = await sealHolds(text);
    const wanted = whole ? site.settings.name : library.damagedName(site.settings.name);
    const name = await freeName(store, wanted);
    const id = freshId(name);
    await store.shelf.save(id, name, await renamedText(text, site, name), library.openFile);
    await openKept(store, id);
    say(store, whole ? 'tell' : 'trouble', whole ? library.opened(file.name) : library.damaged(file.name));
    return whole ? text : null;
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    say(store, 'trouble', library.openTrouble(file.name, why));
    return null;
  }
}

/** The name, with a number behind it when another site of the shelf has it. */
export async function freeName(store: Store, wanted: string): Promise<string> {
  const taken = new Set((await store.shelf.list()).map((entry) => entry.name));
  let name = wanted;
  for (let n = 2; taken.has(name); n++) name = store.state.words.library.numbered(wanted, n);
  return name;
}

/** Notes that the open site now has a file of its own out of this browser. */
export async function exported(store: Store): Promise<void> {
  const { siteId, keeping } = store.state;
  const time = Date.now();
  store.set({ keeping: { ...keeping, exported: time } });
  if (siteId) await store.shelf.vault.setExtra(exportedKey(siteId), time).catch(() => undefined);
}

function give(name: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: 'application/geo+json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** A name every system takes. */
export function fileName(name: string): string {
  const plain = name
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what no file name may have
    .replace(/[\u0000-\u001f<>:"/\\|?*]+/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+|[. ]+$/g, '')
    .slice(0, 80);
  return `${plain || 'site'}.geojson`;
}
