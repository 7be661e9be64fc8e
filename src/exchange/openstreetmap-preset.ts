/**
 * OpenStreetMap tags → our kinds. SOURCE of the tags: OpenStreetMap Wiki, "Map features" (an open convention); from memory, which kind each
 * becomes is this project's reading. Data only; the first row that fits counts, so finer kinds stand first.
 */
import type { Kind } from '../site/types.ts';
import type { Mapping, Rule } from './mapping.ts';

/** Metres a storey where only `building:levels` is given (common practice of building maps; the eaves, not the roof). */
export const metresPerLevel = 3;

function rows(
  kind: Kind,
  attribute: string,
  values: string,
  more: Omit<Rule, 'kind' | 'attribute' | 'value'> = {},
): Rule[] {
  return values.split(' ').map((value) => ({ attribute, value, kind, ...more }));
}

const rules: readonly Rule[] = [
  ...rows('building', 'building', '*', { shape: 'area' }),
  ...rows('water', 'natural', 'water', { shape: 'area' }),
  ...rows('water', 'waterway', 'riverbank dock', { shape: 'area' }),
  ...rows('water', 'landuse', 'reservoir basin', { shape: 'area' }),
  ...rows('water', 'leisure', 'swimming_pool', { shape: 'area' }),
  ...rows('wetland', 'natural', 'wetland mud', { shape: 'area' }),
  ...rows('hedge', 'barrier', 'hedge', { shape: 'line' }),
  ...rows('brush', 'barrier', 'hedge', { shape: 'area' }),
  ...rows('hedge', 'natural', 'tree_row', { shape: 'line', set: { height: 8 } }),
  ...rows('fence', 'barrier', 'fence wall city_wall retaining_wall guard_rail handrail'),
  ...rows('overhead-wire', 'power', 'line minor_line'),
  ...rows('stream', 'waterway', 'stream river brook ditch drain canal tidal_channel', { shape: 'line' }),
  ...rows('path', 'highway', 'footway path track pedestrian cycleway bridleway steps corridor', { shape: 'line' }),
  ...rows('trailhead', 'highway', 'trailhead', { shape: 'point' }),
  ...rows('paved', 'highway', '*', { shape: 'area' }),
  ...rows('road', 'highway', '*', { shape: 'line' }),
  ...rows('paved', 'area:highway', '*', { shape: 'area' }),
  ...rows('paved', 'amenity', 'parking', { shape: 'area' }),
  ...rows('paved', 'aeroway', 'runway taxiway apron', { shape: 'area' }),
  ...rows('tree', 'natural', 'tree', { shape: 'point' }),
  ...rows('shrub', 'natural', 'shrub', { shape: 'point' }),
  ...rows('woods', 'natural', 'wood', { shape: 'area' }),
  ...rows('woods', 'landuse', 'forest', { shape: 'area' }),
  ...rows('woods', 'landcover', 'trees', { shape: 'area' }),
  ...rows('brush', 'natural', 'scrub heath shrubbery', { shape: 'area' }),
  ...rows('brush', 'landcover', 'scrub', { shape: 'area' }),
  ...rows('orchard', 'landuse', 'orchard plant_nursery vineyard', { shape: 'area' }),
  ...rows('crop', 'landuse', 'farmland allotments greenhouse_horticulture', { shape: 'area' }),
  ...rows('meadow', 'landuse', 'meadow', { shape: 'area' }),
  ...rows('meadow', 'natural', 'grassland fell', { shape: 'area' }),
  ...rows('short-grass', 'landuse', 'grass village_green recreation_ground cemetery winter_sports', { shape: 'area' }),
  ...rows('short-grass', 'leisure', 'park pitch golf_course garden common dog_park playground', { shape: 'area' }),
  ...rows('short-grass', 'landcover', 'grass', { shape: 'area' }),
  ...rows('off-limits', 'landuse', 'military', { shape: 'area' }),
  ...rows('off-limits', 'military', '*', { shape: 'area' }),
  ...rows('boundary', 'boundary', 'protected_area national_park', { shape: 'area' }),
  ...rows('boundary', 'leisure', 'nature_reserve', { shape: 'area' }),
  ...rows('landmark', 'man_made', 'survey_point cairn flagpole', { shape: 'point' }),
  ...rows('landmark', 'historic', 'boundary_stone memorial wayside_cross', { shape: 'point' }),
  ...rows('landmark', 'power', 'tower pole', { shape: 'point' }),
];

/** Start of every mapping of a foreign file. */
export const openStreetMapPreset: Mapping = {
  id: 'openstreetmap',
  title: 'OpenStreetMap tags',
  rules,
  transfers: [
    { from: 'name', to: 'name', as: 'text' },
    { from: 'height', to: 'height', as: 'length' },
    { from: 'est_height', to: 'height', as: 'length' },
    { from: 'building:levels', to: 'height', as: 'number', times: metresPerLevel },
    { from: 'diameter_crown', to: 'crownRadius', as: 'length', times: 0.5 },
    { from: 'width', to: 'width', as: 'length' },
  ],
  otherwise: {},
};
