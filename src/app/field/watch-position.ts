/** Follows the device's position. The one file that asks the browser for it. */
import { type Fix, isFix, type Whereabouts } from './position.ts';

const settings: PositionOptions = { enableHighAccuracy: true, maximumAge: 2000, timeout: 20_000 };

/** Silence after which the device is asked again, milliseconds (ours). */
const quiet = 12_000;

/** Calls `tell` at once and with every change until the returned function is called. */
export function watchPosition(tell: (where: Whereabouts) => void): () => void {
  if (!('geolocation' in navigator)) {
    tell({ at: 'not-possible' });
    return () => undefined;
  }
  tell({ at: 'asking' });
  let known = false;
  let last = 0;
  const id = navigator.geolocation.watchPosition(hear, deny, settings);
  // A device that lies still may say nothing for long: it is asked again, so that the place does not look old.
  const poke = setInterval(() => {
    if (known && Date.now() - last > quiet) navigator.geolocation.getCurrentPosition(hear, () => undefined, settings);
  }, quiet);
  return () => {
    navigator.geolocation.clearWatch(id);
    clearInterval(poke);
  };

  function hear(answer: GeolocationPosition): void {
    const fix = fixOf(answer);
    if (!isFix(fix)) return;
    known = true;
    last = Date.now();
    tell({ at: 'fix', fix });
  }

  function deny(error: GeolocationPositionError): void {
    // A fix that was there stays, and grows old in words; only a refusal takes it away.
    if (error.code === error.PERMISSION_DENIED) tell({ at: 'denied' });
    else if (!known) tell({ at: 'none' });
  }
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
