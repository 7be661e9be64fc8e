/** Opens a site: a demo, one from the shelf, or a file's text. */
import { readSiteText } from '../read-site-text.ts';
import type { Store } from '../store.ts';
import { demoText } from './demos.ts';
import { say } from './say.ts';
import { openKept } from './shelf-open.ts';
import { showSite } from './show-site.ts';

/** Opens the demo or kept site of that id; says why when it cannot. */
export async function openSite(store: Store, id: string): Promise<void> {
  try {
    const demo = await demoText(id);
    if (demo === null) await openKept(store, id);
    else await openText(store, id, demo, true);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    say(store, 'trouble', store.state.words.shell.openTrouble(id, why));
  }
}

/** Opens the text of a site file under an id. Trouble in it is kept as issues; a file that holds no site leaves the open one alone. */
export async function openText(store: Store, id: string, text: string, demo = false): Promise<void> {
  const { site, issues } = await readSiteText(text, `${id}.geojson`);
  if (!site) throw new Error(issues.find((i) => i.severity === 'error')?.sentence ?? 'it holds no site');
  showSite(store, id, site, issues, { history: null, saved: { at: demo ? 'demo' : 'never' } });
}
