/** Words from a person's file as the map writes them: one line, no control or direction marks, not too long (a label of thousands of letters stops the drawing of all). */

/** Most letters of a name on the map (ours: longer ones hide the land). */
const longest = 60;

export function mapWords(words: string): string {
  const letters = [
    ...words
      .slice(0, 1000)
      .replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cs}\s]+/gu, ' ')
      .trim(),
  ];
  return letters.length <= longest ? letters.join('') : `${letters.slice(0, longest - 1).join('')}…`;
}
