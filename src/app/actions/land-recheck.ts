/** Things to look at, found again after a change: the site is read as its file would be. */
import { writeSite } from '../../site/write.ts';
import { readSiteText } from '../read-site-text.ts';
import type { Store } from '../store.ts';

/** Features beyond which the whole site is not read again at every change (ours: reading then takes longer than a breath). */
const most = 3000;

/** Puts fresh issues in the place of those from the opening. Nothing happens when the site was changed meanwhile. */
export async function recheck(store: Store): Promise<void> {
  const { site } = store.state;
  if (!site || site.readFrom || site.features.length > most) return;
  const { issues } = await readSiteText(writeSite(site), `${site.settings.name}.geojson`);
  if (store.state.site === site) store.set({ issues });
}
