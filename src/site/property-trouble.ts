/** What is wrong with a value for a known property; null when nothing is. Missing and null are always fine: not given. */
import type { PropertyRow } from './property-table.ts';

/** Ids of the issues a value can raise. */
export type PropertyTrouble = 'property-wrong-type' | 'property-out-of-range' | 'property-not-a-choice';

/** Judges a value by its row. */
export function propertyTrouble(row: PropertyRow, value: unknown): PropertyTrouble | null {
  if (value === undefined || value === null) return null;
  if (!rightType(row, value)) return 'property-wrong-type';
  if (row.words && !row.words.includes(String(value))) return 'property-not-a-choice';
  if (!row.range || typeof value !== 'number') return null;
  return value >= row.range[0] && value <= row.range[1] ? null : 'property-out-of-range';
}

function rightType(row: PropertyRow, value: unknown): boolean {
  if (row.type === 'number') return typeof value === 'number' && Number.isFinite(value);
  if (row.type === 'whole') return Number.isInteger(value);
  if (row.type === 'yes-no') return typeof value === 'boolean';
  if (row.type === 'id') return typeof value === 'string' || Number.isFinite(value);
  return typeof value === 'string';
}
