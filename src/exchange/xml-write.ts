/** XML as text, escaped in one place. */
import { cleanText } from './safe-text.ts';

/** Text for between two tags. */
export function xmlText(value: unknown): string {
  return cleanText(value).replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}

/** Text for between double quotes. */
export function xmlAttribute(value: unknown): string {
  return xmlText(value).replace(/"/g, '&quot;').replace(/'/g, '&apos;').replace(/\n/g, '&#10;').replace(/\t/g, '&#9;');
}

/** `<name>text</name>`, or nothing when the text is empty. `name` is ours, never a person's. */
export function textElement(name: string, value: unknown): string {
  const text = xmlText(value);
  return text === '' ? '' : `<${name}>${text}</${name}>`;
}

/** `<name a="b">…</name>` around lines already written; lines that are empty are left out. */
export function element(name: string, attributes: Readonly<Record<string, unknown>>, lines: readonly string[]): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${xmlAttribute(value)}"`);
  const inside = lines.filter((line) => line !== '');
  return inside.length === 0
    ? `<${name}${written.join('')}/>`
    : `<${name}${written.join('')}>\n${inside.join('\n')}\n</${name}>`;
}

/** The first line of every XML file. */
export const xmlHead = '<?xml version="1.0" encoding="UTF-8"?>\n';
