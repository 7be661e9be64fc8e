/** A local PMTiles file (version 3) laid under the drawing: what is in it, told before it is used. Read piece by piece, nothing is fetched. */
import { FileSource, PMTiles, TileType } from 'pmtiles';
import type { Issue } from '../site/types.ts';
import { fileIssue } from './issue.ts';
import { cutText, oneLine } from './safe-text.ts';

export interface TilePack {
  readonly archive: PMTiles;
  readonly kind: 'pictures' | 'lines';
  readonly leastZoom: number;
  readonly mostZoom: number;
  /** West, south, east, north in degrees. */
  readonly bounds: readonly [number, number, number, number];
  /** Plain text, to be shown and printed; '' when the file gives none. */
  readonly credit: string;
}

/** Opens the file (a browser's File, or any Blob made a File); null with the issue when it is none or of another version. */
export async function readTilePack(
  file: File,
): Promise<{ readonly pack: TilePack | null; readonly issue: Issue | null }> {
  try {
    const archive = new PMTiles(new FileSource(file));
    const header = await archive.getHeader();
    const metadata = (await archive.getMetadata()) as { attribution?: unknown } | undefined;
    const credit = cutText(oneLine(String(metadata?.attribution ?? '').replace(/<[^>]*>/g, ' ')), 200);
    const kind = header.tileType === TileType.Mvt ? 'lines' : 'pictures';
    const bounds = [header.minLon, header.minLat, header.maxLon, header.maxLat] as const;
    return {
      pack: { archive, kind, leastZoom: header.minZoom, mostZoom: header.maxZoom, bounds, credit },
      issue: null,
    };
  } catch (error) {
    const why = error instanceof Error ? error.message.slice(0, 120) : String(error);
    return {
      pack: null,
      issue: fileIssue(
        'error',
        'no-tile-pack',
        `This is not a PMTiles file that can be read: ${why}.`,
        'Choose a PMTiles file of version 3.',
      ),
    };
  }
}
