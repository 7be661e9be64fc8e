/** The regions a site may lie in: they decide which birds may come and which law text is shown. */

import type { Region } from './guide.ts';

export interface RegionRow {
  readonly id: Region;
  readonly name: string;
}

/** In the order shown to people. */
export const regions: readonly RegionRow[] = [
  { id: 'eastern-north-america', name: 'Eastern North America' },
  { id: 'western-north-america', name: 'Western North America' },
  { id: 'europe', name: 'Europe' },
];

/** Whether a site file's region word is one of ours. */
export function isRegion(text: string): text is Region {
  return regions.some((region) => region.id === text);
}
