/** Text of a site file → Site and issues. */

import { defaultSettings } from '../site/defaults.ts';
import type { Issue, Kind, Site, SiteFeature, SiteGeometry, SiteSettings } from '../site/types.ts';

export async function readSiteText(
  text: string,
  _name: string,
): Promise<{ site: Site | null; issues: readonly Issue[] }> {
  const file = JSON.parse(text) as {
    meadowpost?: Partial<SiteSettings>;
    features: { id?: string; geometry: SiteGeometry; properties: Record<string, unknown> }[];
  };
  const features: SiteFeature[] = file.features.map((f, i) => ({
    id: String(f.id ?? `feature-${i}`),
    kind: f.properties.kind as Kind,
    geometry: f.geometry,
    properties: f.properties,
  }));
  return { site: { settings: { ...defaultSettings, ...file.meadowpost } as SiteSettings, features }, issues: [] };
}
