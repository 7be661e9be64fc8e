/** Which season a day belongs to. South of the equator birds nest over New Year: the season runs July to June there and is named by the year it begins in. */
import type { LonLat } from '../site/types.ts';

/** Whether a place lies south of the equator; false where nothing has a place. */
export function isSouth(place: LonLat | null | undefined): boolean {
  return (place?.[1] ?? 0) < 0;
}

/** The season of a readable date YYYY-MM-DD. */
export function seasonOf(date: string, south: boolean): number {
  const year = Number(date.slice(0, 4));
  return south && date.slice(5, 7) < '07' ? year - 1 : year;
}

/** "2026", or "2026–27" south of the equator. */
export function seasonWords(season: number, south: boolean): string {
  return south ? `${season}–${String((season + 1) % 100).padStart(2, '0')}` : String(season);
}

/** Days MM-DD of a northern season, half a year later south of the equator; a day the month does not have becomes its 28th. */
export function localSeason(
  { from, to }: { readonly from: string; readonly to: string },
  south: boolean,
): { readonly from: string; readonly to: string } {
  return south ? { from: later(from), to: later(to) } : { from, to };
}

function later(monthDay: string): string {
  const month = ((Number(monthDay.slice(0, 2)) + 5) % 12) + 1;
  const day = Number(monthDay.slice(3, 5));
  return `${String(month).padStart(2, '0')}-${String(Math.min(day, 28)).padStart(2, '0')}`;
}
