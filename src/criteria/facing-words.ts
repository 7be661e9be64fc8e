/** The facing advice in words. */
import type { FacingWish } from './facing-wish.ts';
import { bearingText } from './units.ts';

/** Whether a bearing lies in the band that is as good as the best. */
export function inBand({ from, to, all }: FacingWish, bearing: number): boolean {
  if (all) return true;
  const past = (((bearing - from) % 360) + 360) % 360;
  return past <= (((to - from) % 360) + 360) % 360;
}

/** "anything 60–130° is as good", or that every bearing is. */
function bandText({ from, to, all }: FacingWish): string {
  return all ? 'any other bearing is as good' : `anything ${Math.round(from)}–${bearingText(to)} is as good`;
}

/** "Face 95°, anything 60–130° is as good", or what turning a box that faces elsewhere would bring it to. */
export function facingSentence(wish: FacingWish, used: number): string {
  if (Math.round(used) % 360 === wish.best) return `Face ${bearingText(wish.best)}, ${bandText(wish)}`;
  if (inBand(wish, used)) return `Faces ${bearingText(used)}, as good as ${bearingText(wish.best)}; ${bandText(wish)}`;
  return `Faces ${bearingText(used)}; ${bearingText(wish.best)} would be better, ${bandText(wish)}`;
}

/** What the latitude does to the advice. `latitude` in degrees, south below zero. */
export function latitudeNote(latitude: number, warm: number, cool: number): string {
  const side = latitude < 0 ? 'S' : 'N';
  const north = Math.abs(latitude);
  const mirrored = latitude < 0 ? ' (north and south change places south of the equator)' : '';
  if (north >= cool)
    return `From ${cool}° ${side} toward the pole, ${latitude < 0 ? 'east to northeast' : 'east to southeast'} warms eggs on early mornings; sources disagree${mirrored}.`;
  if (north <= warm)
    return `From ${warm}° ${side} toward the equator, ${latitude < 0 ? 'south to southeast' : 'north to northeast'} keeps the box cooler; sources disagree${mirrored}.`;
  return `Between ${warm}° and ${cool}° ${side} the advice lies between ${latitude < 0 ? 'south and east' : 'north and east'}; sources disagree${mirrored}.`;
}
