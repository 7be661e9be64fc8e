import { resolve } from 'node:path';
import { type Plugin, transformWithOxc } from 'vite';

const source = (file: string) => resolve('node_modules/maplibre-gl/src', file);

/** MapLibre's own worker file and the source it is made from. */
export const mapWorker = { 'maplibre-gl/dist/maplibre-gl-worker.mjs': source('source/worker.ts') };

const unused = '\0unused';

/** What no site shows: a tile format (MLT), the globe, and layers of heat, relief and heights. Each name throws when it is asked for after all. */
const unusedNames = [
  'decodeTile',
  'GEOMETRY_TYPE',
  'GlobeProjection',
  'createGlobeTransform',
  'GlobeCameraHelper',
  'VerticalPerspectiveCameraHelper',
  'createVerticalPerspectiveTransform',
  'VerticalPerspectiveProjection',
  'drawHeatmap',
  'drawHillshade',
  'drawColorRelief',
  'drawFillExtrusion',
];

function isUnused(id: string, importer = ''): boolean {
  if (id === '@maplibre/mlt') return importer.includes('/maplibre-gl/src/');
  if (importer.endsWith('/webgl/draw/index.ts')) return /draw_(heatmap|hillshade|color_relief|fill_extrusion)/.test(id);
  return importer.endsWith('/projection_factory.ts') && /globe_|vertical_perspective_/.test(id);
}

/** Where MapLibre draws the stencil of a source's tiles, and what is put before that. */
const maskStart = 'this.currentStencilSource = layer.source;';
const keepMasks = `const drawn = this.tileClippingMaskIDs;
if (this.currentStencilSource !== undefined && tileIDs.length === Object.keys(drawn).length && tileIDs.every(({key}) => key in drawn)) {
  ${maskStart}
  return;
}
${maskStart}`;

/**
 * All our sources have the same tiles, yet MapLibre fills the whole stencil anew at each change of source: 17 times a frame over the park,
 * a third of what the frame cost. The masks that stand are kept where they are of the same tiles.
 */
function withKeptMasks(code: string): string {
  if (code.split(maskStart).length !== 2)
    throw new Error('MapLibre draws its clipping masks elsewhere now: see withKeptMasks');
  return code.replace(maskStart, () => keepMasks);
}

/**
 * MapLibre from the sources in its package: its ready-made page and worker files hold 125 kB (zipped) of the same code twice.
 * The looks of its buttons and popups are left out too: the app draws its own.
 */
export function mapFromSource(): Plugin {
  return {
    name: 'map-from-source',
    apply: 'build',
    enforce: 'pre',
    resolveId(id, importer) {
      if (id === 'maplibre-gl') return source('index.ts');
      return isUnused(id, importer) ? unused : null;
    },
    load(id) {
      if (id !== unused) return null;
      return `function no() { throw new Error("this part of the map is left out of the app"); }
export { ${unusedNames.map((name) => `no as ${name}`).join(', ')} };`;
    },
    transform(code, id) {
      // A field that is only declared must not become a field again: a parent class has filled it.
      if (id.includes('/maplibre-gl/src/') && id.endsWith('.ts'))
        return transformWithOxc(id.endsWith('/render/frame_render_context.ts') ? withKeptMasks(code) : code, id, {
          typescript: { removeClassFieldsWithoutInitializer: true },
        });
      if (!id.includes('/maplibre-gl/dist/maplibre-gl.css')) return null;
      const used = code.replace(/[^{}]+\{[^{}]*\}/g, (rule) =>
        /-ctrl|-popup/.test(rule.split('{')[0] ?? '') ? '' : rule,
      );
      return { code: used, map: null };
    },
  };
}
