/** How large the ground is drawn. Web Mercator on the WGS84 equator, 512 px tiles as MapLibre counts zoom. */

/** Length of the equator, meters (WGS84, 2π · 6 378 137). */
const equator = 2 * Math.PI * 6378137;

/** px a meter takes at zoom 22 at this latitude; halve it for each zoom less. */
export function pixelsPerMetre22(latitude: number): number {
  return (512 * 2 ** 22) / (equator * Math.cos((latitude * Math.PI) / 180));
}
