/** Which nodes of the net the quickest ways between its places go through. */
import { fastestMinutesPerMetre } from './pace.ts';
import { Quickest } from './quickest.ts';
import type { WalkGrid } from './walk-grid.ts';

export interface Routes {
  /** Nodes from place k to place m > k of the net, both counted; empty when there is no way. */
  route(k: number, m: number): readonly number[];
  /** Minutes along it; Infinity when there is none. */
  minutes(k: number, m: number): number;
}

/** Routes between all places, every one looked for to its end. */
export function allRoutes(net: WalkGrid, places: number): Routes {
  const quickest = new Quickest(net, fastestMinutesPerMetre);
  const table = new Table(places);
  for (let k = 0; k + 1 < places; k++) {
    quickest.run(net.firstPlace + k, k + 1);
    table.note(net, quickest, k, k + 1);
  }
  return { route: (k, m) => table.routes.get(k * places + m) ?? [], minutes: (k, m) => table.minutes[k * places + m] };
}

/** Places around each that routes are looked for to; a short round goes from one to the next of them (ours). */
const neighbours = 14;

/**
 * Routes between neighbours, for a first answer: places far apart are reckoned over others between, and their own route is looked for
 * when it is asked for. Which places can be reached at all is known exactly.
 */
export function nearRoutes(net: WalkGrid, places: number): Routes {
  const quickest = new Quickest(net, fastestMinutesPerMetre);
  const table = new Table(places);
  const known = new Uint8Array(places);
  for (let k = 0; k < places; k++) {
    // One run to the end in each part of the land that is cut off from the others.
    quickest.run(net.firstPlace + k, 0, known[k] ? neighbours + 1 : Infinity);
    for (let m = 0; m < places; m++) if (quickest.reached(net.firstPlace + m)) known[m] = 1;
    table.note(net, quickest, k, 0);
  }
  table.closeOver();
  return {
    minutes: (k, m) => table.minutes[k * places + m],
    route(k, m) {
      const key = k * places + m;
      if (table.minutes[key] === Infinity) return [];
      if (!table.routes.has(key)) {
        quickest.run(net.firstPlace + k, m);
        table.note(net, quickest, k, m);
      }
      return table.routes.get(key)!;
    },
  };
}

class Table {
  readonly places: number;
  readonly minutes: Float64Array;
  /** By k × places + m, k < m. */
  readonly routes = new Map<number, readonly number[]>();

  constructor(places: number) {
    this.places = places;
    this.minutes = new Float64Array(places * places).fill(Infinity);
    for (let k = 0; k < places; k++) this.minutes[k * places + k] = 0;
  }

  /** Notes what a run from place k found out about the places from `from` on. */
  note(net: WalkGrid, quickest: Quickest, k: number, from: number): void {
    for (let m = from; m < this.places; m++) {
      const node = net.firstPlace + m;
      const key = Math.min(k, m) * this.places + Math.max(k, m);
      if (m === k || !quickest.reached(node) || this.routes.has(key)) continue;
      const way = quickest.wayTo(node);
      this.routes.set(key, m > k ? way : way.reverse());
      this.minutes[k * this.places + m] = this.minutes[m * this.places + k] = quickest.minutes[node];
    }
  }

  /** Minutes over any number of other places (Floyd 1962). */
  closeOver(): void {
    const { places, minutes } = this;
    for (let via = 0; via < places; via++) {
      for (let k = 0; k < places; k++) {
        const first = minutes[k * places + via];
        if (first === Infinity) continue;
        for (let m = 0; m < places; m++) {
          const over = first + minutes[via * places + m];
          if (over < minutes[k * places + m]) minutes[k * places + m] = over;
        }
      }
    }
  }
}
