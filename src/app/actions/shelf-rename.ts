/** A site's text under another name. */
import type { Site } from '../../site/types.ts';
import { writeSite } from '../../site/write.ts';
import { named } from './shelf-name.ts';

/** The text itself where the name is its own already. */
export async function renamedText(text: string, site: Site, name: string): Promise<string> {
  return site.settings.name === name ? text : writeSite(named(site, name));
}
