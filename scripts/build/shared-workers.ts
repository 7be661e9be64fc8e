import { dirname, resolve } from 'node:path';
import type { Plugin } from 'vite';

/**
 * Workers as further entries of one build, so that what page and worker both need is fetched once.
 * `import url from './x.ts?worker&url'` gives the address, as it does in the dev server.
 * `sources` names another file for a worker a package gives ready-made.
 */
export function sharedWorkers(sources: Readonly<Record<string, string>>): Plugin {
  const mark = '\0worker:';
  return {
    name: 'shared-workers',
    apply: 'build',
    enforce: 'pre',
    resolveId(source, importer) {
      if (!source.endsWith('?worker&url')) return null;
      const file = source.slice(0, -'?worker&url'.length);
      return mark + (sources[file] ?? resolve(importer ? dirname(importer) : '.', file));
    },
    load(id) {
      if (!id.startsWith(mark)) return null;
      const entry = this.emitFile({ type: 'chunk', id: id.slice(mark.length), preserveSignature: false });
      return `export default import.meta.ROLLUP_FILE_URL_${entry};`;
    },
  };
}
