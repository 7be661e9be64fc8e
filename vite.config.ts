import { createHash } from 'node:crypto';
import { defineConfig, type Plugin } from 'vite';

/** Writes the list of the app's files into the service worker, with a version that changes when any of them does. */
function precache(): Plugin {
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

export default defineConfig({
  base: './',
  worker: { format: 'es' },
  // Used only in the worker or in lazy parts: named here so that the dev server and the browser tests need not reload when they are met.
  optimizeDeps: {
    include: ['geomagnetism', 'highs', 'proj4', 'suncalc', 'geojson-validation', 'pdfkit', 'uqr', 'fflate'],
  },
  plugins: [precache()],
  build: {
    target: 'es2022',
    sourcemap: true,
    chunkSizeWarningLimit: 1200,
    rollupOptions: {
      input: { main: 'index.html', 'service-worker': 'src/app/offline/service-worker.ts' },
      output: {
        entryFileNames: (chunk) => (chunk.name === 'service-worker' ? 'service-worker.js' : 'assets/[name]-[hash].js'),
        manualChunks: (id) => (id.includes('maplibre-gl') ? 'maplibre' : undefined),
      },
    },
  },
});
