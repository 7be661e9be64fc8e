/** Text on its way out or in: what every format and reader can carry. Names are a stranger's text until they have been here. */

// Only tab and line feed of the control characters are allowed in XML 1.0; C1 controls make some readers refuse the file.
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const unreadable = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]/g;

/** The text without control characters and half characters (lone surrogates); line ends become LF. Anything but text, number or boolean is ''. */
export function cleanText(value: unknown): string {
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (typeof value !== 'string') return '';
  return wellFormed(value.replace(/\r\n?/g, '\n').replace(unreadable, ''));
}

/** `cleanText` on one line, without space at the ends. */
export function oneLine(value: unknown): string {
  return cleanText(value)
    .replace(/[\s\u2028\u2029]+/g, ' ')
    .trim();
}

/** At most `most` characters, whole ones (a pair of surrogates is one); a cut text ends with '…'. */
export function cutText(text: string, most: number): string {
  if (text.length <= most) return text;
  const whole = Array.from(text);
  return whole.length <= most ? text : `${whole.slice(0, most - 1).join('')}…`;
}

const plainLetters: Readonly<Record<string, string>> = {
  ß: 'ss',
  ẞ: 'SS',
  ø: 'o',
  Ø: 'O',
  æ: 'ae',
  Æ: 'AE',
  œ: 'oe',
  Œ: 'OE',
  đ: 'd',
  Đ: 'D',
  ð: 'd',
  þ: 'th',
  ł: 'l',
  Ł: 'L',
  ı: 'i',
};

/** Letters, digits, space and hyphen only: what the oldest GPS receiver shows. Accents go, other scripts are lost (may be ''). */
export function asciiText(value: unknown): string {
  return oneLine(value)
    .replace(/[ßẞøØæÆœŒđĐðþłŁı]/g, (letter) => plainLetters[letter] ?? '')
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[^A-Za-z0-9 -]/g, ' ')
    .replace(/ +/g, ' ')
    .trim();
}

function wellFormed(text: string): string {
  // Most text has no surrogates at all, and the search below is slow.
  if (!/[\ud800-\udfff]/.test(text)) return text;
  return text.replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '');
}
