/** A site with nothing drawn yet. */
import { defaultSettings } from './defaults.ts';
import type { Site, SiteSettings } from './types.ts';

/** An empty site with the default settings, where `options` says nothing else. The caller, who has a clock, gives the date. */
export function newSite(name: string, options: Partial<SiteSettings> = {}): Site {
  return { settings: { ...defaultSettings, ...options, name, fileVersion: 1 }, features: [] };
}
