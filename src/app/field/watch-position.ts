/** Follows the device's position. The one file that asks the browser for it. */
import { type Fix, isFix, type Whereabouts } from './position.ts';

/** Calls `tell` at once and with every change until the returned function is called. */
export function watchPosition(tell: (where: Whereabouts) => void): () => void {
  if (!('geolocation' in navigator)) {
    tell({ at: 'not-possible' });
    return () => undefined;
  }
  tell({ at: 'asking' });
  let known = false;
  const id = navigator.geolocation.watchPosition(
    (answer) => {
      const fix = fixOf(answer);
      if (!isFix(fix)) return;
      known = true;
      tell({ at: 'fix', fix });
    },
    (error) => {
      // A fix that was there stays, and grows old in words; only a refusal takes it away.
      if (error.code === error.PERMISSION_DENIED) tell({ at: 'denied' });
      else if (!known) tell({ at: 'none' });
    },
    { enableHighAccuracy: true, maximumAge: 2000, timeout: 20_000 },
  );
  return () => navigator.geolocation.clearWatch(id);
}

function fixOf({ coords, timestamp }: GeolocationPosition): Fix {
  return {
    position: [coords.longitude, coords.latitude],
    accuracy: coords.accuracy,
    time: timestamp,
    heading: coords.heading !== null && Number.isFinite(coords.heading) ? coords.heading : null,
    speed: coords.speed !== null && Number.isFinite(coords.speed) ? coords.speed : null,
  };
}
