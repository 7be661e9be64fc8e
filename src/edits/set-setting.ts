/** Change a setting of the site. */
import { readSettings } from '../site/read-settings.ts';
import type { Site, SiteSettings } from '../site/types.ts';
import { type Edit, withFeatures } from './edit.ts';

/** Sets one setting; the value goes through the same gate as a file's. */
export function setSetting<K extends Exclude<keyof SiteSettings, 'fileVersion' | 'extra'>>(
  site: Site,
  key: K,
  value: SiteSettings[K],
): Edit {
  const wanted = { ...site.settings, [key]: value };
  const { issues } = readSettings(wanted, site.settings.name);
  const bad = issues.find(({ severity }) => severity === 'warning');
  if (bad) return { refused: `${bad.sentence} ${bad.fix}` };
  return { site: withFeatures({ ...site, settings: wanted }, site.features), sentence: `Set ${words(key)}` };
}

/** "minutesPerBox" → "minutes per box". */
function words(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
