import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Plugin } from 'vite';

/**
 * The map's frame needs one projection of proj4's thirty, one datum and no reader of projection files: only that goes into what is loaded first.
 * Tools that read foreign files load the whole library when they are used.
 */
export function lightProjection(): Plugin {
  const light = '\0proj4-light';
  const tag = '?light';
  return {
    name: 'light-projection',
    apply: 'build',
    enforce: 'pre',
    async resolveId(source, importer) {
      if (source === 'proj4' && importer?.endsWith('/src/ground/frame.ts')) return light;
      if (importer === light) return `${resolve(`node_modules/proj4/lib/${source}.js`)}${tag}`;
      if (!importer?.endsWith(tag)) return null;
      if (source === 'wkt-parser') return `\0none${tag}`;
      if (source.endsWith('/constants/Datum')) return `\0one-datum${tag}`;
      const found = await this.resolve(source, importer.slice(0, -tag.length), { skipSelf: true });
      return found?.id.includes('/proj4/lib/') ? found.id + tag : found;
    },
    load(id) {
      if (id === light)
        return `import core from 'core';
import Proj from 'Proj';
import simple from 'projections/tmerc';
import exact from 'projections/etmerc';
Proj.projections.add(simple);
Proj.projections.add(exact);
export default Object.assign(core, { Proj });`;
      if (id === `\0none${tag}`) return 'export default () => { throw new Error("no projection files here"); };';
      if (id === `\0one-datum${tag}`)
        return "export default { wgs84: { towgs84: '0,0,0', ellipse: 'WGS84', datumName: 'WGS84' } };";
      return id.endsWith(tag) ? readFileSync(id.slice(0, -tag.length), 'utf8') : null;
    },
  };
}
