/** Bird ids as people read them. */
import { birdById, isBird } from '../birds/index.ts';

/** The bird's name, or its id when no guide knows it. */
export function birdName(id: string): string {
  return isBird(id) ? birdById(id).name : id;
}
