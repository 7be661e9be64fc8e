/** Lengths as people and map files write them. */

/** The international foot and inch, exactly (NIST Handbook 44, Appendix C). */
const foot = 0.3048;
const inch = 0.0254;
const units: Readonly<Record<string, number>> = {
  '': 1,
  m: 1,
  metre: 1,
  metres: 1,
  meter: 1,
  meters: 1,
  cm: 0.01,
  ft: foot,
  feet: foot,
  foot,
  yd: 0.9144,
  "'": foot,
  '"': inch,
  in: inch,
};

/** Metres of "12", "12.5 m", "12,5", "40 ft", "40'", `5'11"`; null when it is no length. A bare number is metres. */
export function readLength(text: string): number | null {
  const tidy = text.trim().toLowerCase().replace('′', "'").replace('″', '"');
  const both = /^(\d+(?:\.\d+)?)' ?(\d+(?:\.\d+)?)"$/.exec(tidy);
  if (both) return Number(both[1]) * foot + Number(both[2]) * inch;
  const one = /^(\d+(?:[.,]\d+)?)\s*([a-z'"]*)$/.exec(tidy);
  const unit = one && Object.hasOwn(units, one[2]!) ? units[one[2]!]! : null;
  return one && unit !== null ? Number(one[1]!.replace(',', '.')) * unit : null;
}
