/** Short, unique, plain names for the small screen of a GPS receiver: the number first, then one word. */
import type { ExportedThing } from './exported.ts';
import { asciiText } from './safe-text.ts';

/** The most letters of the word behind the number (ours: "07 Flycatcher" still shows whole on small receivers). */
export const mostWordLetters = 10;

/** One word a bird name ("Bluebird"); birds of one plan that would share it get letters of their first word ("E Bluebird", "W Bluebird"). */
export function birdWords(names: readonly string[]): ReadonlyMap<string, string> {
  const different = [...new Set(names)];
  const last = (name: string) => asciiText(name).split(' ').at(-1) ?? '';
  return new Map(
    different.map((name) => {
      const shared = different.some((other) => other !== name && last(other) === last(name));
      return [name, shared ? withInitial(name) : cutWord(last(name)) || 'Box'];
    }),
  );
}

/** Thing id → short name, all different: "07 Bluebird", "Start", "Landmark 2". Case does not make a difference. */
export function shortNames(things: readonly ExportedThing[]): ReadonlyMap<string, string> {
  const digits = Math.max(2, ...things.map((thing) => String(thing.number ?? '').length));
  const taken = new Map<string, number>();
  const names = new Map<string, string>();
  for (const thing of things) {
    const word = cutWord(asciiText(thing.word)) || cutWord(asciiText(thing.kind)) || 'Place';
    const number = thing.number === null ? '' : `${String(thing.number).padStart(digits, '0')} `;
    names.set(thing.id, firstFree(`${number}${word}`, taken));
  }
  return names;
}

/** The name, or the name with the next free number. `taken` holds the last number tried for each name. */
function firstFree(name: string, taken: Map<string, number>): string {
  const last = taken.get(name.toLowerCase());
  if (last === undefined) {
    taken.set(name.toLowerCase(), 1);
    return name;
  }
  let next = last + 1;
  while (taken.has(`${name} ${next}`.toLowerCase())) next++;
  taken.set(name.toLowerCase(), next);
  taken.set(`${name} ${next}`.toLowerCase(), 1);
  return `${name} ${next}`;
}

function withInitial(name: string): string {
  const words = asciiText(name).split(' ');
  const word = words.at(-1) ?? '';
  const first = words[0] ?? '';
  const room = mostWordLetters - word.length - 1;
  return room > 0 ? `${first.slice(0, room)} ${word}` : cutWord(`${first.slice(0, 1)}${word}`);
}

function cutWord(word: string): string {
  return word.slice(0, mostWordLetters).trim();
}
