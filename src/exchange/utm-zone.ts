/** A UTM zone as people write it ("17T", "17 N", "UTM zone 17 south", "EPSG:32617"), and a place in it. */
import type { LonLat } from '../site/types.ts';
import { readPosition } from './coordinates.ts';
import { fromUtm } from './utm.ts';

/** `half` is a latitude band C–X, a half of the earth, or null when the text gives the number alone. */
export interface ZoneText {
  readonly zone: number;
  readonly half: string | 'north' | 'south' | null;
}

/** Null when the text is no zone of UTM. A letter alone is kept as it is: "S" may be a band or the southern half. */
export function readZone(text: string): ZoneText | null {
  const plain = text.trim().toUpperCase();
  const code = /^(?:EPSG:)?(326|327|269|258)(\d\d)$/.exec(plain);
  if (code) return inRange(Number(code[2]), code[1] === '327' ? 'south' : 'north');
  const found = /^(?:UTM)?[\s,]*(?:ZONE)?\s*(\d{1,2})\s*([C-HJ-NP-X]|NORTH|SOUTH)?$/.exec(plain);
  if (!found) return null;
  const half = found[2] ?? null;
  return inRange(Number(found[1]), half === 'NORTH' ? 'north' : half === 'SOUTH' ? 'south' : half);
}

function inRange(zone: number, half: string | null): ZoneText | null {
  return zone >= 1 && zone <= 60 ? { zone, half } : null;
}

/** The zone in words: "17T", "17 north". */
export function zoneWords({ zone, half }: ZoneText): string {
  return half === null || half.length === 1 ? `${zone}${half ?? ''}` : `${zone} ${half}`;
}

/** The place of an easting and a northing in metres on WGS84; null when the zone has none there, or its half is not known. */
export function placeInZone(at: ZoneText, easting: number, northing: number): LonLat | null {
  const { zone, half } = at;
  if (half === null || !(easting >= 100_000 && easting < 1_000_000 && northing >= 0 && northing <= 10_000_000))
    return null;
  if (half.length > 1) return fromUtm({ zone, band: half === 'north' ? 'N' : 'M', easting, northing });
  return readPosition(`${zone}${half} ${easting.toFixed(4)} ${northing.toFixed(4)}`).position;
}
