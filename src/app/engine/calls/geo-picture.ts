/** A GeoTIFF picture as rows of colors with its corners, read away from the page. */
import { type GeoPicture, readGeoPicture } from '../../../exchange/geotiff-in.ts';

export interface GeoPictureQuestion {
  readonly bytes: Uint8Array;
  readonly projection: string | null;
}

export type GeoPictureAnswer =
  | { readonly picture: GeoPicture; readonly sentence: null }
  | { readonly picture: null; readonly sentence: string; readonly asks: boolean };

export async function geoPicture({ bytes, projection }: GeoPictureQuestion): Promise<GeoPictureAnswer> {
  const answer = await readGeoPicture(bytes, projection ? { projection } : {});
  if (answer.value) return { picture: answer.value, sentence: null };
  const sentence = answer.issues.map((one) => `${one.sentence} ${one.fix}`).join(' ');
  return { picture: null, sentence, asks: 'ask' in answer && answer.ask !== undefined };
}
