/** Objects from strangers, copied so that no name in them can reach the program's own. */
import { cleanText } from './safe-text.ts';

const poison = new Set(['__proto__', 'constructor', 'prototype']);

/** Own members only, without `__proto__` and its like; text is cleaned of control characters; undefined and NaN go. */
export function safeRecord(value: unknown): Record<string, unknown> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return {};
  const kept = Object.entries(value).filter(([key, member]) => !poison.has(key) && isKept(member));
  return Object.fromEntries(kept.map(([key, member]) => [cleanText(key), cleanMember(member)]));
}

function isKept(member: unknown): boolean {
  return member !== undefined && !(typeof member === 'number' && !Number.isFinite(member));
}

function cleanMember(member: unknown): unknown {
  if (typeof member === 'string') return cleanText(member);
  if (Array.isArray(member)) return member.map(cleanMember);
  return typeof member === 'object' && member !== null ? safeRecord(member) : member;
}
