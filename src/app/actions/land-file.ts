/** The site as a file: downloaded with its own SHA-256, opened again with the seal looked at first. */
import { cut } from '../../site/label.ts';
import { findSeal, withSeal, withSlot } from '../../site/seal.ts';
import type { Site } from '../../site/types.ts';
import { writeSite } from '../../site/write.ts';
import { sha256 } from '../digest.ts';
import { firstLand } from '../land-state.ts';
import type { Store } from '../store.ts';
import { openText } from './open.ts';
import { say } from './say.ts';

/** What the seal of a text says: it fits, it does not (damaged or changed by hand), or there is none. */
export async function sealState(text: string): Promise<'whole' | 'broken' | 'none'> {
  const sealed = findSeal(text);
  if (!sealed) return 'none';
  return (await sha256(sealed.hashed)) === sealed.seal ? 'whole' : 'broken';
}

/** The site file with its seal. */
export async function sealedText(site: Site): Promise<string> {
  const open = withSlot(writeSite(site));
  return withSeal(open, await sha256(open));
}

/** "wickett-lane-yard.geojson". */
export function fileNameOf(site: Site): string {
  const plain = site.settings.name
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase();
  return `${cut(plain) || 'site'}.geojson`;
}

interface SavePicker {
  showSaveFilePicker?: (
    options: object,
  ) => Promise<{ createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }> }>;
}

/** Writes the file where the person says, or hands it to the browser's downloads. Says what was done. */
export async function downloadSite(store: Store): Promise<void> {
  const { site, words } = store.state;
  if (!site) return;
  const name = fileNameOf(site);
  try {
    const text = await sealedText(site);
    const picker = (window as SavePicker).showSaveFilePicker;
    if (picker) await saveWhere(picker, name, text);
    else download(name, text);
    say(store, 'tell', words.land.file.saved(name));
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return;
    say(store, 'trouble', words.land.file.notSaved(error instanceof Error ? error.message : String(error)));
  }
}

async function saveWhere(
  picker: NonNullable<SavePicker['showSaveFilePicker']>,
  name: string,
  text: string,
): Promise<void> {
  const types = [{ accept: { 'application/geo+json': ['.geojson'] } }];
  const handle = await picker.call(window, { suggestedName: name, types });
  const out = await handle.createWritable();
  await out.write(text);
  await out.close();
}

function download(name: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: 'application/geo+json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Opens a site file; a copy whose seal does not fit is opened with that said. True when a site was opened. */
export async function openFile(store: Store, file: File): Promise<boolean> {
  const { words } = store.state;
  try {
    const text = await file.text();
    const seal = await sealState(text);
    await openText(store, `site-${Date.now().toString(36)}`, text);
    store.set({ land: firstLand, selection: null, place: 'land' });
    const { opened } = words.land.file;
    say(store, seal === 'broken' ? 'trouble' : 'tell', opened[seal](file.name));
    return true;
  } catch (error) {
    say(store, 'trouble', words.land.file.notOpened(file.name, error instanceof Error ? error.message : String(error)));
    return false;
  }
}
