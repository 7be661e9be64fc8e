/** Numbers as text in a file: plain decimals with a dot, never an exponent. */

/** Decimals written for degrees: 7 = 1.1 cm, finer than any receiver (expectation of the trade, not of a standard). */
export const degreePlaces = 7;

/** `places` decimals, no exponent, no minus before nought. Throws when the number is not finite or too large to write plainly. */
export function plainDecimal(value: number, places: number): string {
  if (!Number.isFinite(value) || Math.abs(value) >= 1e21) throw new Error(`cannot write ${value} as a plain decimal`);
  const text = value.toFixed(places);
  return /^-[0.]+$/.test(text) ? text.slice(1) : text;
}

/** The number without needless noughts, as a spreadsheet shows it. */
export function shortDecimal(value: number, places: number): string {
  const text = plainDecimal(value, places);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** Degrees with seven decimals. */
export function degrees(value: number): string {
  return plainDecimal(value, degreePlaces);
}

/** A number typed in a file: optional sign, digits, one dot or none, optional small exponent; null when it is anything else (NaN, 1e999, '12 m'). */
export function readNumber(text: string): number | null {
  if (!/^\s*[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?\s*$/.test(text)) return null;
  const value = Number(text);
  return Number.isFinite(value) ? value : null;
}

/** Rounded to `places` decimals, as a number. */
export function roundTo(value: number, places: number): number {
  return Number(plainDecimal(value, places));
}
