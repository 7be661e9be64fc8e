/** Two angles out of one line of text: decimal degrees, degrees and minutes, degrees minutes seconds, with or without letters. */

/** One angle in degrees; `axis` when a hemisphere letter names it, else null. */
export interface Angle {
  readonly value: number;
  readonly axis: 'lat' | 'lon' | null;
}

/** The two angles in the order typed, or a sentence why there are not two. Expects upper case and the plain marks ° ' ". */
export function anglePair(text: string): readonly [Angle, Angle] | string {
  const halves = splitPair(text);
  if (!halves) return 'Two figures are needed: a latitude and a longitude.';
  const one = angle(halves[0]);
  if (typeof one === 'string') return one;
  const two = angle(halves[1]);
  if (typeof two === 'string') return two;
  if (one.axis && one.axis === two.axis) {
    return `Both figures are a ${one.axis === 'lat' ? 'latitude (N or S)' : 'longitude (E or W)'}.`;
  }
  return [one, two];
}

function splitPair(text: string): [string, string] | null {
  return bySemicolon(text) ?? byComma(text) ?? byLetter(text) ?? byNumbers(text);
}

function bySemicolon(text: string): [string, string] | null {
  const parts = text.split(';');
  return parts.length === 2 ? [commaToDot(parts[0]!), commaToDot(parts[1]!)] : null;
}

function byComma(text: string): [string, string] | null {
  const parts = text.split(',');
  if (parts.length === 2) return [parts[0]!, parts[1]!];
  // Decimal commas: "41,5 -81,25" and "41,5, -81,25".
  const decimals = /^(\D*\d+,\d+\D*?),? ([^,\d]*\d+,\d+[^,\d]*)$/.exec(text);
  return decimals ? [commaToDot(decimals[1]!), commaToDot(decimals[2]!)] : null;
}

function byLetter(text: string): [string, string] | null {
  const after = /^([^NSEW]*\d[^NSEW]*[NSEW])(.*\d.*)$/.exec(text);
  if (after) return [after[1]!, after[2]!];
  const before = /^([NSEW][^NSEW]*\d[^NSEW]*)([NSEW].*\d.*)$/.exec(text);
  return before ? [before[1]!, before[2]!] : null;
}

function byNumbers(text: string): [string, string] | null {
  if (!/^[-+°'":.\d ]+$/.test(text)) return null;
  const numbers = text.match(/[-+]?\d+(?:\.\d+)?[°'": ]*/g) ?? [];
  if (numbers.length % 2 || numbers.length > 6 || numbers.length === 0) return null;
  const half = numbers.length / 2;
  return [numbers.slice(0, half).join(''), numbers.slice(half).join('')];
}

function commaToDot(text: string): string {
  return text.replace(/(\d),(\d)/g, '$1.$2');
}

function angle(text: string): Angle | string {
  const letters = text.match(/[NSEW]/g) ?? [];
  const body = text.replace(/[NSEW]/g, ' ').trim();
  const shape =
    /^([-+])? ?(\d+(?:\.\d*)?|\.\d+)(?: ?[° :] ?(\d+(?:\.\d+)?)(?: ?[': ] ?(\d+(?:\.\d+)?) ?"?)? ?'?)? ?°?$/.exec(body);
  const inside = /[\d.][NSEW]\d/.test(text.replace(/\s/g, ''));
  if (!shape || inside || letters.length > 1) return `"${text.trim()}" is not an angle.`;
  const [, sign, degrees = '', minutes = '0', seconds = '0'] = shape;
  if (Number(minutes) >= 60 || Number(seconds) >= 60) return `Minutes and seconds stay under 60 in "${text.trim()}".`;
  if ((degrees.includes('.') && shape[3]) || (minutes.includes('.') && shape[4])) {
    return `Only the last part of "${text.trim()}" may have decimals.`;
  }
  const size = Number(degrees) + Number(minutes) / 60 + Number(seconds) / 3600;
  const letter = letters[0];
  if (letter && sign) return `"${text.trim()}" has both a sign and a letter.`;
  const value = letter === 'S' || letter === 'W' || sign === '-' ? -size : size;
  return { value: value || 0, axis: letter ? (letter === 'N' || letter === 'S' ? 'lat' : 'lon') : null };
}
