/** Text of a site file → Site and issues. One door, so that it can be moved into the worker without touching who calls it. */
import { type ReadSite, readSite } from '../site/read.ts';

export async function readSiteText(text: string, fileName: string): Promise<ReadSite> {
  return readSite(text, fileName);
}
