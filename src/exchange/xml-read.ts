/** XML read the same way in a page, a worker and Node. The one file that knows the parser. Entities are refused before it sees them. */
import { SaxesParser } from 'saxes';
import type { Issue } from '../site/types.ts';
import { fileIssue } from './issue.ts';
import { importLimits } from './limits.ts';
import { cleanText } from './safe-text.ts';

/** An element by its name without prefix; `nodes` holds text and elements in order. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly nodes: readonly (XmlElement | string)[];
}

/** The root element, or null with the reason. */
export type ReadXml =
  | { readonly root: XmlElement; readonly issues: readonly Issue[] }
  | { readonly root: null; readonly issues: readonly Issue[] };

/** Parses text that holds no document type, no entities of its own and no more than 32 levels. */
export function readXml(text: string): ReadXml {
  const readable = cleanText(text);
  const refusal = forbidden(readable);
  if (refusal) return { root: null, issues: [refusal] };
  const warnings = readable.length < text.replace(/\r\n/g, '\n').length ? [controlsGone] : [];
  try {
    return { root: parse(readable.trimStart()), issues: warnings };
  } catch (error) {
    return { root: null, issues: [broken(String(error instanceof Error ? error.message : error))] };
  }
}

type Growing = XmlElement & { readonly nodes: (XmlElement | string)[] };

/** Prefixes are cut off rather than looked up: files with undeclared ones are common. Throws at the first mistake. */
function parse(text: string): XmlElement {
  const parser = new SaxesParser();
  const open: Growing[] = [{ name: '', attributes: new Map(), nodes: [] }];
  const addText = (piece: string) => open.at(-1)!.nodes.push(piece);
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const element: Growing = { name: withoutPrefix(name), attributes: new Map(Object.entries(attributes)), nodes: [] };
    open.at(-1)!.nodes.push(element);
    open.push(element);
  });
  parser.on('closetag', () => open.pop());
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.write(text).close();
  return open[0]!.nodes.find((node): node is XmlElement => typeof node !== 'string')!;
}

function withoutPrefix(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

/** Children that are elements, of this name when one is given. */
export function childrenOf(parent: XmlElement, name?: string): XmlElement[] {
  return parent.nodes.filter(
    (node): node is XmlElement => typeof node !== 'string' && (name === undefined || node.name === name),
  );
}

/** Text of the first child of this name, trimmed and cleaned; null when there is none or it is empty. */
export function childText(parent: XmlElement, name: string): string | null {
  const child = parent.nodes.find((node) => typeof node !== 'string' && node.name === name);
  const text = child ? textOf(child as XmlElement) : '';
  return text === '' ? null : text;
}

/** All text inside, trimmed and cleaned. */
export function textOf(element: XmlElement): string {
  return cleanText(rawText(element)).trim();
}

function rawText(element: XmlElement): string {
  return element.nodes.map((node) => (typeof node === 'string' ? node : rawText(node))).join('');
}

const controlsGone = fileIssue(
  'repaired',
  'control-characters',
  'Control characters were taken out.',
  'Nothing to do.',
);

function broken(why: string): Issue {
  const reason = cleanText(why).split('\n')[0]!.slice(0, 200);
  return fileIssue(
    'error',
    'xml-broken',
    `The file is not sound XML: ${reason}`,
    'Export it again from where it came.',
  );
}

const entityIssue = fileIssue(
  'error',
  'xml-entities',
  'The file declares a document type or entities (DOCTYPE, ENTITY), which can hide an attack, so it was not read.',
  'Export it again as plain GPX or KML, or delete the lines with DOCTYPE.',
);

/** What is refused before parsing. Character data (CDATA) and comments cannot declare anything, so they are passed over. */
function forbidden(text: string): Issue | null {
  let depth = 0;
  for (let at = text.indexOf('<'); at >= 0; at = text.indexOf('<', at)) {
    if (text.startsWith('<!--', at)) at = past(text, '-->', at + 4);
    else if (text.startsWith('<![CDATA[', at)) at = past(text, ']]>', at + 9);
    else if (text.startsWith('<!', at)) return entityIssue;
    else if (text.startsWith('<?', at)) at = past(text, '?>', at + 2);
    else {
      const end = tagEnd(text, at + 1);
      if (text[at + 1] === '/') depth--;
      else if (text[end - 2] !== '/') depth++;
      if (depth > importLimits.mostDepth) return tooDeep;
      at = end;
    }
  }
  return null;
}

const tooDeep = fileIssue(
  'error',
  'too-deep',
  `Elements are nested more than ${importLimits.mostDepth} deep.`,
  'Export the places without their folders.',
);

function past(text: string, mark: string, from: number): number {
  const at = text.indexOf(mark, from);
  return at < 0 ? text.length : at + mark.length;
}

function tagEnd(text: string, from: number): number {
  for (let i = from; i < text.length; i++) {
    const c = text[i];
    if (c === '>') return i + 1;
    if (c === '"' || c === "'") i = past(text, c, i + 1) - 1;
  }
  return text.length;
}
