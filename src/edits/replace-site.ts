/** Put another site in the place of this one, as an edit that can be undone (opening a copy, taking back an older one). */
import type { Site } from '../site/types.ts';
import type { Edit } from './edit.ts';

/** The other site as it is, its text included: saving it unchanged writes its own bytes. */
export function replaceSite(_site: Site, other: Site, sentence: string): Edit {
  return { site: other, sentence };
}
