import { createHash } from 'node:crypto';
import { basename, resolve } from 'node:path';
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

/**
 * The map's frame needs one projection of proj4's thirty: only that one is put into what is loaded first and into the engine's worker.
 * Tools that read foreign files load the whole library when they are used.
 */
function oneProjection(): Plugin {
  const light = '\0proj4-one-projection';
  return {
    name: 'one-projection',
    apply: 'build',
    enforce: 'pre',
    resolveId: (source, importer) => (source === 'proj4' && importer?.endsWith('/src/ground/frame.ts') ? light : null),
    load(id) {
      if (id !== light) return null;
      const part = (name: string) => JSON.stringify(resolve(`node_modules/proj4/lib/${name}.js`));
      return `import core from ${part('core')};
import Proj from ${part('Proj')};
import simple from ${part('projections/tmerc')};
import exact from ${part('projections/etmerc')};
Proj.projections.add(simple);
Proj.projections.add(exact);
export default core;`;
    },
  };
}

/** Every browser that runs the app reads woff2: the older form stays only where a PDF takes its fonts from it. */
function noOldFonts(): Plugin {
  return {
    name: 'no-old-fonts',
    apply: 'build',
    generateBundle(_options, bundle) {
      const parts = Object.values(bundle);
      const code = parts.map((part) => (part.type === 'chunk' ? part.code : '')).join('');
      for (const part of parts)
        if (part.type === 'asset' && part.fileName.endsWith('.css') && typeof part.source === 'string')
          part.source = part.source.replace(/,\s*url\([^)]*\.woff\)\s*format\(["']woff["']\)/g, '');
      for (const { fileName } of parts)
        if (fileName.endsWith('.woff') && !code.includes(basename(fileName))) delete bundle[fileName];
    },
  };
}

export default defineConfig({
  base: './',
  worker: { format: 'es', plugins: () => [oneProjection()] },
  // Used only in the worker or in lazy parts: named here so that the dev server and the browser tests need not reload when they are met.
  optimizeDeps: {
    include: ['geomagnetism', 'highs', 'proj4', 'suncalc', 'geojson-validation', 'pdfkit', 'uqr', 'fflate'],
  },
  plugins: [oneProjection(), noOldFonts(), precache()],
  build: {
    target: 'es2022',
    sourcemap: true,
    chunkSizeWarningLimit: 1200,
    rollupOptions: {
      input: { main: 'index.html', 'service-worker': 'src/app/offline/service-worker.ts' },
      output: {
        entryFileNames: (chunk) => (chunk.name === 'service-worker' ? 'service-worker.js' : 'assets/[name]-[hash].js'),
        manualChunks: (id) => (id.includes('/node_modules/maplibre-gl/') ? 'maplibre' : undefined),
      },
    },
  },
});
