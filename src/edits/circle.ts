/** Draw a round area from its middle and radius. */
import { circle as turfCircle } from '@turf/turf';
import type { AreaKind, LonLat, Site } from '../site/types.ts';
import { addFeature } from './add-feature.ts';
import type { Edit } from './edit.ts';

/** Corners of a circle: the outline stays within 0.12 % of the radius. */
const steps = 64;

/** Adds a round area. `radius` in metres, 0.5 to 2,000. */
export function addCircle(
  site: Site,
  kind: AreaKind,
  centre: LonLat,
  radius: number,
  properties: Readonly<Record<string, unknown>> = {},
): Edit {
  if (!(radius >= 0.5 && radius <= 2000))
    return { refused: 'The radius has to be from 0.5 to 2,000 meters. Give another radius.' };
  if (!Number.isFinite(centre[0]) || Math.abs(centre[1]) > 85) {
    return { refused: 'The middle is not a place where a site can lie. Choose another place.' };
  }
  const { geometry } = turfCircle([...centre], radius, { steps, units: 'meters' });
  return addFeature(site, { kind, geometry, properties });
}
