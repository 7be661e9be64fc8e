/** A foreign file read and mapped away from the page. The file read last is kept, so that another mapping is quick. */

import type { AttributeSummary } from '../../../exchange/attribute-values.ts';
import { type Imported, mapFile, type ReadFile, readFile } from '../../../exchange/import.ts';
import type { ImportOptions } from '../../../exchange/import-types.ts';
import type { Mapping } from '../../../exchange/mapping.ts';
import { startingMapping } from '../../../exchange/presets.ts';
import type { CallTools } from '../protocol.ts';

/** `bytes` may be left out when the file of this `key` was just read with the same options. */
export interface ImportQuestion {
  readonly key: string;
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly options: Omit<ImportOptions, 'onProgress'>;
  /** Null = the starting mapping of the format. */
  readonly mapping: Mapping | null;
}

export interface ImportAnswer {
  readonly imported: Imported;
  readonly mapping: Mapping;
  readonly attributes: readonly AttributeSummary[];
}

interface Kept {
  readonly key: string;
  readonly file: ReadFile;
}

/** One reader for one worker. */
export function makeImporter(): (question: ImportQuestion, tools: CallTools) => ImportAnswer {
  let kept: Kept | null = null;
  return ({ key, name, bytes, options, mapping }, tools) => {
    const whole = `${key} ${JSON.stringify(options)}`;
    if (kept?.key !== whole) {
      const onProgress = (share: number, doing: string) => tools.progress(share, doing);
      kept = { key: whole, file: readFile(bytes, name, { ...options, onProgress }) };
    }
    const used = mapping ?? startingMapping(kept.file.format ?? 'geojson');
    return { imported: mapFile(kept.file, used), mapping: used, attributes: kept.file.attributes };
  };
}
