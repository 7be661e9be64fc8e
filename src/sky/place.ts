/** Longitude and latitude in degrees, WGS84, in that order (the same shape as the site room's, which this room must not import). */
export type LonLat = readonly [lon: number, lat: number];
