/** What a site file holds of a plan kept by name: what made it, what it was worth, and where its boxes stood. */
import type { LonLat, SiteSettings } from './types.ts';

/** `new`: to be set up; `locked`: the same, and kept by the person; `standing`: it stood already. */
export const keptStates = ['new', 'locked', 'standing'] as const;

/** A box of a kept plan. */
export interface KeptBox {
  readonly number: number;
  /** Feature id of a drawn post, or the id of a suggested one. */
  readonly post: string;
  /** Whether the post was only suggested, not drawn. */
  readonly suggested?: boolean;
  readonly bird: string;
  readonly at: LonLat;
  /** 0–100, or null when it could not be judged. */
  readonly score: number | null;
  readonly state: (typeof keptStates)[number];
}

/** The settings that decide a plan: taking a kept plan up again sets them, and no others. */
export const planKeys = [
  'region',
  'stormFrom',
  'julyMaximum',
  'box',
  'start',
  'direction',
  'suggestGrid',
  'reachOfPaths',
  'minimumScore',
  'walkLimit',
  'minutesPerBox',
  'walkers',
  'seed',
  'wanted',
  'weights',
  'figures',
  'order',
] as const satisfies readonly (keyof SiteSettings)[];

/** The part of the settings a plan was made with. */
export type PlanSettings = Pick<SiteSettings, (typeof planKeys)[number]>;

/** A plan kept by name. Its figures are those of the day it was kept. */
export interface KeptPlan {
  readonly name: string;
  /** Summed score of its sites (0–100 a site). */
  readonly score: number;
  /** A pair counts once. */
  readonly sites: number;
  /** Of all rounds together. */
  readonly metres: number;
  readonly minutes: number;
  /** What was known of how good it is, in words. */
  readonly proof: string;
  readonly settings: PlanSettings;
  readonly boxes: readonly KeptBox[];
}

/** The part of the settings that decides a plan. */
export function planSettings(settings: SiteSettings): PlanSettings {
  return Object.fromEntries(planKeys.map((key) => [key, settings[key]])) as unknown as PlanSettings;
}
