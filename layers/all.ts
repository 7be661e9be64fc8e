/** Every subject, in the order of order.json. A new file needs its name there and its import here. */
import boundary from './boundary.json';
import brush from './brush.json';
import building from './building.json';
import crop from './crop.json';
import feeder from './feeder.json';
import fence from './fence.json';
import hedge from './hedge.json';
import landmark from './landmark.json';
import meadow from './meadow.json';
import names from './names.json';
import offLimits from './off-limits.json';
import orchard from './orchard.json';
import orderFile from './order.json';
import overheadWire from './overhead-wire.json';
import path from './path.json';
import paved from './paved.json';
import perch from './perch.json';
import posts from './posts.json';
import road from './road.json';
import shortGrass from './short-grass.json';
import shrub from './shrub.json';
import stream from './stream.json';
import trailhead from './trailhead.json';
import tree from './tree.json';
import type { Order, Subject } from './types.ts';
import water from './water.json';
import wetland from './wetland.json';
import woods from './woods.json';

/** Slots and subjects, bottom first. */
export const order: Order = orderFile;

const files = [
  shortGrass,
  meadow,
  crop,
  wetland,
  orchard,
  brush,
  woods,
  paved,
  water,
  building,
  offLimits,
  boundary,
  stream,
  path,
  road,
  hedge,
  fence,
  overheadWire,
  shrub,
  tree,
  perch,
  feeder,
  landmark,
  trailhead,
  names,
  posts,
] as unknown as readonly Subject[];

/** All subjects, bottom first. */
export const subjects: readonly Subject[] = [...files].sort(
  (a, b) => order.subjects.indexOf(a.id) - order.subjects.indexOf(b.id),
);
