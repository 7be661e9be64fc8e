/** The device's own position, asked for once, with how sure it is of it. */
import type { LonLat } from '../../../site/types.ts';

/** `radius` in metres: the true place lies within it 19 times in 20 (W3C Geolocation API, "accuracy": 95 % confidence). */
export interface DeviceFix {
  readonly at: LonLat;
  readonly radius: number;
}

/** A fix no worse than this is used at the first press, metres (ours: half the least spacing that matters to a bird). */
export const goodFix = 10;

/** Milliseconds to wait for a fix. */
const patience = 20_000;

export function devicePosition(): Promise<DeviceFix | { readonly trouble: 'denied' | 'none' }> {
  return new Promise((resolve) => {
    if (!('geolocation' in navigator)) return resolve({ trouble: 'none' });
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => resolve({ at: [coords.longitude, coords.latitude], radius: coords.accuracy }),
      (error) => resolve({ trouble: error.code === error.PERMISSION_DENIED ? 'denied' : 'none' }),
      { enableHighAccuracy: true, timeout: patience, maximumAge: 5000 },
    );
  });
}
