/** What one box sees of the afternoon: the horizon around it and the season's sun. */
import type { Calls } from '../calls.ts';
import type { SkyView } from '../sky-view.ts';

export function skyView(_input: Calls['skyView']['input']): SkyView {
  throw new Error('the horizon is not built yet');
}
