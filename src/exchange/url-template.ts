/** The address of aerial or street pictures as a person types it: judged here, never asked. The host is shown before the first request. */
import type { Issue } from '../site/types.ts';
import { fileIssue } from './issue.ts';
import { cutText, oneLine } from './safe-text.ts';

/** A usable template. `tms` = rows count from the south. `credit` must be shown on the map and printed. */
export interface PictureSource {
  readonly template: string;
  readonly host: string;
  readonly tms: boolean;
  readonly credit: string;
  /** The address carries a key that everybody sees who gets the site file. */
  readonly hasKey: boolean;
}

/** The source, or null with the issue. No request is made. */
export function readPictureSource(
  typed: string,
  credit: string,
): { readonly source: PictureSource | null; readonly issue: Issue | null } {
  const text = typed.trim();
  const trouble = troubleWith(text);
  if (trouble) return { source: null, issue: fileIssue('error', 'bad-picture-address', trouble[0], trouble[1]) };
  const template = text.replace('{-y}', '{y}').replace(/\{(r|ratio)\}/g, '');
  const url = parse(template)!;
  const source: PictureSource = {
    template,
    host: url.host,
    tms: text.includes('{-y}'),
    credit: cutText(oneLine(credit), 200),
    hasKey: /[?&][^=&]*(key|token|auth|sig)[^=&]*=/i.test(text),
  };
  return { source, issue: source.credit === '' ? noCredit : null };
}

const noCredit = fileIssue(
  'warning',
  'no-credit',
  'No credit is given for these pictures.',
  'Type the credit their owner asks for; it is shown and printed.',
);

const example = 'Type an address such as https://tiles.example.org/{z}/{x}/{y}.png';

function troubleWith(text: string): readonly [sentence: string, fix: string] | null {
  if (text === '') return ['No address was typed.', example];
  if (text.length > 2000) return ['The address is too long.', example];
  const url = parse(text);
  if (!url) return ['This is not an address of pictures.', example];
  if (url.protocol !== 'https:' && !isThisMachine(url))
    return ['Only addresses that start with https:// are used.', example];
  if (url.username || url.password)
    return ['The address holds a user name or password, which would stand in the site file.', 'Take it out.'];
  if (/[{}]|%7b|%7d/i.test(url.host))
    return ['The host of the address must not have a placeholder.', 'Write one of the hosts out instead of {s}.'];
  const whole = text.replace('{-y}', '{y}');
  const missing = ['{z}', '{x}', '{y}'].filter((part) => !whole.includes(part));
  if (missing.length > 0) return [`The address lacks ${missing.join(', ')}.`, example];
  const odd = whole.match(/\{[^}]*\}/g)?.find((part) => !['{z}', '{x}', '{y}', '{r}', '{ratio}'].includes(part));
  return odd ? [`The placeholder ${cutText(odd, 30)} is not known.`, example] : null;
}

function parse(text: string): URL | null {
  try {
    return new URL(text);
  } catch {
    return null;
  }
}

/** Pictures served by this very machine may come without https. */
function isThisMachine(url: URL): boolean {
  return url.protocol === 'http:' && /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/.test(url.host);
}
