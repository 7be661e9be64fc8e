import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';

/** Writes the list of the app's files into the service worker, with a version that changes when any of them does. */
export function precache(): Plugin {
  return {
    name: 'precache',
    apply: 'build',
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const worker = bundle['service-worker.js'];
        if (worker?.type !== 'chunk') return;
        const files = Object.keys(bundle).filter((name) => name !== 'service-worker.js' && !name.endsWith('.map'));
        const version = createHash('sha256').update(worker.code);
        for (const name of files.sort()) {
          const part = bundle[name];
          version.update(name).update(part.type === 'chunk' ? part.code : part.source);
        }
        const list = ['./', 'manifest.webmanifest', 'icon.svg', ...files.filter((name) => name !== 'index.html')];
        worker.code = worker.code
          .replace(/['"`]__PRECACHE_FILES__['"`]/, list.map((file) => JSON.stringify(file)).join(','))
          .replace('__PRECACHE_VERSION__', version.digest('hex').slice(0, 16));
      },
    },
  };
}
