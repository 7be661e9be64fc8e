import { defineConfig } from 'vite';
import { lightProjection } from './scripts/build/light-projection.ts';
import { mapFromSource, mapWorker } from './scripts/build/map-from-source.ts';
import { precache } from './scripts/build/precache.ts';
import { sharedWorkers } from './scripts/build/shared-workers.ts';

export default defineConfig({
  base: './',
  worker: { format: 'es' },
  // Used only in the worker or in lazy parts: named here so that the dev server and the browser tests need not reload when they are met.
  optimizeDeps: {
    include: ['geomagnetism', 'highs', 'proj4', 'suncalc', 'geojson-validation', 'pdfkit', 'uqr', 'fflate'],
  },
  plugins: [sharedWorkers(mapWorker), mapFromSource(), lightProjection(), precache()],
  build: {
    target: 'es2022',
    // A worker has no document to put preload links into.
    modulePreload: { resolveDependencies: () => [] },
    sourcemap: true,
    chunkSizeWarningLimit: 1200,
    rollupOptions: {
      input: { main: 'index.html', 'service-worker': 'src/app/offline/service-worker.ts' },
      output: {
        entryFileNames: (chunk) => (chunk.name === 'service-worker' ? 'service-worker.js' : 'assets/[name]-[hash].js'),
      },
    },
  },
});
