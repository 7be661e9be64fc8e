/** A count typed on large keys. */

/** Two digits are enough: the fullest box known held forty eggs. */
const most = 99;

/** The count after one key: a digit, `back` or `clear`. A third digit starts anew, so that a slip is put right by typing on. */
export function pressed(count: number | null, key: string): number | null {
  if (key === 'clear') return null;
  if (key === 'back') return count === null || count < 10 ? null : Math.floor(count / 10);
  const digit = Number(key);
  if (!Number.isInteger(digit) || digit < 0 || digit > 9) return count;
  const longer = (count ?? 0) * 10 + digit;
  return longer > most ? digit : longer;
}
