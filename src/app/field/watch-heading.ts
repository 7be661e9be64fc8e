/** Follows the phone's compass where there is one. The one file that listens to it. */
import { eased, type Heading, headingOf, type OrientationReading } from './heading.ts';

type Asking = { requestPermission?: () => Promise<string> };

/** Whether the device wants to be asked first, by a tap (iOS). */
export function mustAskForCompass(): boolean {
  return (
    typeof DeviceOrientationEvent !== 'undefined' &&
    typeof (DeviceOrientationEvent as unknown as Asking).requestPermission === 'function'
  );
}

/** Asks for the compass; true where nothing needs asking. Only works inside a tap. */
export async function askForCompass(): Promise<boolean> {
  const { requestPermission } = DeviceOrientationEvent as unknown as Asking;
  if (!requestPermission) return true;
  return requestPermission.call(DeviceOrientationEvent).then(
    (said) => said === 'granted',
    () => false,
  );
}

/** Least change told, degrees: the screen need not be drawn for a tremble (ours). */
const least = 2;

/** `declination` in degrees east, or null. Calls `tell` until the returned function is called. */
export function watchHeading(declination: () => number | null, tell: (heading: Heading) => void): () => void {
  let smooth: number | null = null;
  let told: number | null = null;
  const hear = (event: Event) => {
    const heading = headingOf(event as Event & OrientationReading, declination(), screen.orientation?.angle ?? 0);
    if (!heading) return;
    smooth = eased(smooth, heading.degrees);
    if (told !== null && Math.abs(((smooth - told + 540) % 360) - 180) < least) return;
    told = smooth;
    tell({ ...heading, degrees: smooth });
  };
  addEventListener('deviceorientationabsolute', hear);
  addEventListener('deviceorientation', hear);
  return () => {
    removeEventListener('deviceorientationabsolute', hear);
    removeEventListener('deviceorientation', hear);
  };
}
