/** Calendar days as text. */

/** Whether a value is a day of the calendar written YYYY-MM-DD (ISO 8601), years 1900–2199. */
export function isDay(value: unknown): value is string {
  const parts = typeof value === 'string' ? /^(\d{4})-(\d\d)-(\d\d)$/.exec(value) : null;
  if (!parts) return false;
  const [year, month, day] = parts.slice(1).map(Number) as [number, number, number];
  return year >= 1900 && year < 2200 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
}

function daysIn(year: number, month: number): number {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  if (month === 2) return leap ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}
