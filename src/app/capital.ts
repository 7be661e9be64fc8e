/** A word at the start of a title: "short grass" → "Short grass". */
export function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
