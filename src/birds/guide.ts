/** What a bird guide is: figures with their source, no code. Species differences are rows of this data, never an `if`. */

export type Region = 'eastern-north-america' | 'western-north-america' | 'europe';

/** A measured in a paper; B government or extension; C charity, club or hobby; M from memory; X arithmetic; ours = this project's reading. */
export type Grade = 'A' | 'A-' | 'B' | 'C' | 'M' | 'X' | 'ours';

/** A published figure: never without its source. `source` holds keys of `sources.ts`. */
export interface Figure<T = number> {
  readonly value: T;
  readonly unit: string;
  readonly source: readonly string[];
  readonly grade: Grade;
  /** What a person may reasonably set instead. */
  readonly range?: readonly [number, number];
  readonly note?: string;
}

/** Straight lines between knots [raw, score 0–1], flat outside: raw rises strictly. A curve has no cliffs. */
export type Curve = readonly (readonly [raw: number, score: number])[];

export interface HoleSize {
  /** Width in millimetres (diameter when round). */
  readonly width: number;
  /** Height in millimetres; equal to the width when round. */
  readonly height: number;
  readonly shape: 'round' | 'oval' | 'crescent';
}

export interface BirdGuide {
  /** Such as `eastern-bluebird`. */
  readonly id: string;
  /** Such as `Eastern Bluebird`. */
  readonly name: string;
  readonly latin: string;
  readonly regions: readonly Region[];
  readonly box: {
    readonly hole: Figure<HoleSize>;
    /** Inside width and depth, mm. */
    readonly floor: Figure<readonly [number, number]>;
    /** Inside height, mm. */
    readonly depth: Figure<readonly [number, number]>;
    /** Floor to the hole, mm. */
    readonly holeAboveFloor: Figure<readonly [number, number]>;
    /** Ground to the hole, metres. */
    readonly mount: Figure<readonly [number, number]>;
  };
  readonly spacing: {
    /** Metres to the next site of the same bird. Hard. 0 = none (a colony). */
    readonly same: Figure;
    /** Metres to a site of another bird that matters to this one, by bird id. Hard. */
    readonly other: Readonly<Record<string, Figure>>;
    /** Whether two boxes a few yards apart are used as one site of this bird. */
    readonly pairs: boolean;
  };
  readonly habitat: {
    /** Weight of each kind of land as low cover, 0–1, where it differs from the default. */
    readonly lowCover?: Figure<Readonly<Partial<Record<string, number>>>>;
    /** What the share counts, where "Low cover" would be the wrong words. */
    readonly lowCoverName?: string;
    /** Share of low cover in the disc (0–1) → score. */
    readonly lowCoverShare: Figure<Curve>;
    /** Mean free sight in metres → score; null where sight does not matter to the bird. */
    readonly sight: Figure<Curve> | null;
    /** Signed metres to the woods edge or a tree (inside negative) → score. */
    readonly woodsEdge: Figure<Curve>;
    /** Nearer to the woods edge than this many metres a box is refused; null where nothing is. */
    readonly woodsEdgeHard: Figure | null;
    /** Metres to brush, hedge or woods → score against wrens; null where the bird does not mind. */
    readonly brush: Figure<Curve> | null;
    /** Metres to the nearest building / feeder → score against House Sparrows; null where the bird does not mind. */
    readonly building: Figure<Curve> | null;
    readonly feeder: Figure<Curve> | null;
    /** Metres to water or wetland → score; null = neutral. */
    readonly water: Figure<Curve> | null;
    /** Whether a perch in front is wanted. */
    readonly perch: boolean;
    /** Nothing taller than the hole within this many metres (hard), preferred from the second; null = no such rule. */
    readonly clearAround: Figure<readonly [number, number]> | null;
  };
  /** Criterion id → factor on the site's weight, where this bird cares more or less than the default. */
  readonly weights?: Readonly<Record<string, number>>;
  readonly season: {
    /** First and last day with eggs or young, "MM-DD". */
    readonly from: string;
    readonly to: string;
    readonly source: readonly string[];
    readonly grade: Grade;
  };
  readonly nest: Figure<string>;
  readonly eggs: { readonly text: Figure<string>; readonly count: Figure<readonly [number, number]> };
  readonly clock: {
    /** Days; earliest and latest. */
    readonly build: Figure<readonly [number, number]> | null;
    readonly incubation: Figure<readonly [number, number]>;
    readonly nestling: Figure<readonly [number, number]>;
    /** Days from one egg to the next; one a day where absent. */
    readonly layEvery?: Figure<readonly [number, number]>;
    /** Sits before the last egg is laid, so young hatch on several days. */
    readonly sitsEarly?: boolean;
  };
  /** Not protected in the United States (House Sparrow, European Starling): never planned for, only recognized. */
  readonly pest?: boolean;
  readonly note?: string;
}
