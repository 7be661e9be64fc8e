/** The files a plan can be taken away in, one row each. */
import { writePlacesCsv } from '../../exchange/csv.ts';
import type { Exported } from '../../exchange/exported.ts';
import { writeGpx } from '../../exchange/gpx.ts';
import { writeKml } from '../../exchange/kml.ts';
import { writePlanGeojson } from '../../exchange/plan-geojson.ts';
import { planThings } from '../../exchange/plan-things.ts';
import { makeFrame, middleOf } from '../../ground/frame.ts';
import type { Plan } from '../../plan-types.ts';
import type { Site } from '../../site/types.ts';
import { writeSite } from '../../site/write.ts';

export interface PlanFile {
  readonly id: 'gpx' | 'kml' | 'csv' | 'plan' | 'site';
  /** With the dot. */
  readonly ending: string;
  readonly type: string;
  write(plan: Plan, site: Site): string;
}

export const planFiles: readonly PlanFile[] = [
  { id: 'gpx', ending: '.gpx', type: 'application/gpx+xml', write: (plan, site) => writeGpx(things(plan, site)) },
  {
    id: 'kml',
    ending: '.kml',
    type: 'application/vnd.google-earth.kml+xml',
    write: (plan, site) => writeKml(things(plan, site)),
  },
  { id: 'csv', ending: '.csv', type: 'text/csv', write: (plan, site) => writePlacesCsv(things(plan, site)) },
  {
    id: 'plan',
    ending: '-plan.geojson',
    type: 'application/geo+json',
    write: (plan, site) => writePlanGeojson(plan, frameOf(site)),
  },
  { id: 'site', ending: '.geojson', type: 'application/geo+json', write: (_plan, site) => writeSite(site) },
];

function things(plan: Plan, site: Site): Exported {
  return planThings(plan, frameOf(site));
}

function frameOf(site: Site) {
  return makeFrame(middleOf(site.features));
}
