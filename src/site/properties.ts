/**
 * Reads known properties of a feature with care: each gives the value, or the documented default (or null) when the file says
 * nothing or something that cannot be used. The trouble itself is named by `readSite`.
 */
import { defaultCrownRadius, defaultHedgeWidth, defaultHeights } from './defaults.ts';
import { hasProperty, type PropertyName, propertyRows } from './property-table.ts';
import { propertyTrouble } from './property-trouble.ts';
import type { PostState, SiteFeature } from './types.ts';

/** The part of a feature these readers look at. */
type Described = Pick<SiteFeature, 'kind' | 'properties'>;

/** The file's value when it can be used; null when it is not given, not of this kind, or not usable. */
function known(feature: Described, name: PropertyName): unknown {
  const value = Object.hasOwn(feature.properties, name) ? feature.properties[name] : null;
  const usable = hasProperty(feature.kind, name) && propertyTrouble(propertyRows[name], value) === null;
  return usable ? (value ?? null) : null;
}

function numberOf(feature: Described, name: PropertyName): number | null {
  const value = known(feature, name);
  return typeof value === 'number' ? value : null;
}

function textOf(feature: Described, name: PropertyName): string | null {
  const value = known(feature, name);
  const text = typeof value === 'string' || typeof value === 'number' ? String(value).trim() : '';
  return text === '' ? null : text;
}

/** What people call it, or null. Plain text from the file: never to be shown as HTML. */
export function nameOf(feature: Described): string | null {
  return textOf(feature, 'name');
}

/** Height in metres of what stands there; 0 for a kind that has no height of its own. */
export function heightOf(feature: Described): number {
  return numberOf(feature, 'height') ?? defaultHeights[feature.kind]?.value ?? 0;
}

/** Radius of a tree's crown in metres. */
export function crownOf(feature: Described): number {
  return numberOf(feature, 'crownRadius') ?? defaultCrownRadius.value;
}

/** Width of a hedge in metres. */
export function hedgeWidth(feature: Described): number {
  return numberOf(feature, 'width') ?? defaultHedgeWidth.value;
}

/** Height of a hedge in metres. */
export function hedgeHeight(feature: Described): number {
  return heightOf(feature);
}

/** Whether the ground is marked sprayed. */
export function isSprayed(feature: Described): boolean {
  return known(feature, 'sprayed') === true;
}

/** Whether the ground is marked grazed. */
export function isGrazed(feature: Described): boolean {
  return known(feature, 'grazed') === true;
}

/** Whether it is in leaf while birds nest; true unless the file says no. */
export function isInLeaf(feature: Described): boolean {
  return known(feature, 'leafOn') !== false;
}

/** `candidate` unless the file says otherwise. */
export function postState(feature: Described): PostState {
  const state = known(feature, 'state');
  return state === 'fixed' || state === 'retired' ? state : 'candidate';
}

/** Whether every plan keeps this candidate; a standing box is kept anyhow and a retired one never, so there it says nothing. */
export function isLocked(feature: Described): boolean {
  return postState(feature) === 'candidate' && known(feature, 'locked') === true;
}

/** Id of the bird the box is for, or null when not decided. */
export function postBird(feature: Described): string | null {
  return textOf(feature, 'bird');
}

/** Number on the box, or null. */
export function postNumber(feature: Described): number | null {
  return numberOf(feature, 'number');
}

/** Degrees clockwise from true north, 0 ≤ facing < 360, or null when the person left it open. */
export function postFacing(feature: Described): number | null {
  const facing = numberOf(feature, 'facing');
  return facing === 360 ? 0 : facing;
}

/** Metres from ground to hole, or null. */
export function postHoleHeight(feature: Described): number | null {
  return numberOf(feature, 'holeHeight');
}

/** Id of the post it is paired with, or null. The post may be missing: `readSite` names that. */
export function postPair(feature: Described): string | null {
  return textOf(feature, 'pair');
}
