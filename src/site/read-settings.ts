/** The `meadowpost` member → settings: each checked by itself, the default where it cannot be used. */

import { isDay } from './day.ts';
import { defaultSettings } from './defaults.ts';
import { type IssueId, trouble } from './issues.ts';
import { isObject, member, otherMembers } from './json.ts';
import { cut } from './label.ts';
import { readOrder, readPlans } from './read-plans.ts';
import { readWanted } from './read-wanted.ts';
import { type SettingRow, settingTable } from './setting-table.ts';
import type { Issue, SiteSettings } from './types.ts';

/** Reads the settings; `name` is used where the file gives none (its file's name). */
export function readSettings(raw: unknown, name: string): { settings: SiteSettings; issues: Issue[] } {
  const issues: Issue[] = [];
  const start: SiteSettings = { ...defaultSettings, name };
  if (!isObject(raw)) {
    issues.push(noSettings(raw));
    return { settings: start, issues };
  }
  const settings: Record<string, unknown> = { ...start };
  for (const [key, row] of Object.entries(settingTable)) {
    const value = member(raw, key);
    if (value === undefined || value === null) continue;
    const id = settingTrouble(row, value);
    if (id) issues.push(settingIssue(id, key, value, row, settings[key]));
    else settings[key] = row.type === 'id' ? String(value) : value;
  }
  if (member(raw, 'region') === undefined) issues.push(noRegion());
  const wanted = readWanted(member(raw, 'wanted'), issues);
  const known = [
    ...Object.keys(settingTable),
    'fileVersion',
    'wanted',
    'weights',
    'figures',
    'order',
    'plans',
    'sha256',
  ];
  const extra = otherMembers(raw, known);
  return {
    settings: {
      ...(settings as unknown as SiteSettings),
      wanted,
      weights: numbers(member(raw, 'weights'), 'weights', [0, 1000], issues),
      figures: numbers(member(raw, 'figures'), 'figures', [-1e9, 1e9], issues),
      order: readOrder(member(raw, 'order'), issues),
      plans: readPlans(member(raw, 'plans'), issues, (made) => readSettings(made, name)),
      ...(extra ? { extra } : {}),
    },
    issues,
  };
}

function noSettings(raw: unknown): Issue {
  if (raw === undefined || raw === null) {
    const fix = 'Set the name, the region and the birds wanted; they are saved with the site.';
    return trouble('settings-missing', {}, 'The file holds no settings; the defaults are used.', fix);
  }
  return trouble(
    'setting-wrong-type',
    {},
    'The member “meadowpost” is not an object; the defaults are used.',
    'Write it as {"name": …}.',
  );
}

function noRegion(): Issue {
  const fix = 'Choose the region: it decides which birds are looked at.';
  return trouble('region-missing', {}, 'The settings name no region; eastern North America is used.', fix);
}

function settingTrouble(row: SettingRow, value: unknown): IssueId | null {
  if (row.type === 'text') return typeof value === 'string' ? null : 'setting-wrong-type';
  if (row.type === 'day') return isDay(value) ? null : 'date-unreadable';
  if (row.type === 'word') return row.words?.includes(String(value)) ? null : 'setting-not-a-choice';
  if (row.type === 'id') return typeof value === 'string' || typeof value === 'number' ? null : 'setting-wrong-type';
  if (typeof value !== 'number' || !Number.isFinite(value)) return 'setting-wrong-type';
  if (row.type === 'whole' && !Number.isInteger(value)) return 'setting-wrong-type';
  const [least, most] = row.range ?? [-Infinity, Infinity];
  return value >= least && value <= most ? null : 'setting-out-of-range';
}

function settingIssue(id: IssueId, key: string, value: unknown, row: SettingRow, used: unknown): Issue {
  const shown = cut(JSON.stringify(value));
  const sentence = `The setting ${key} is ${shown}; used instead: ${used === null ? 'none' : String(used)}.`;
  const unit = row.unit ? ` ${row.unit}` : '';
  const wanted =
    row.words?.join(' or ') ?? (row.range ? `a number from ${row.range[0]} to ${row.range[1]}${unit}` : row.type);
  const fix = row.type === 'day' ? 'Write a day as YYYY-MM-DD, such as 2026-06-15.' : `Write ${wanted}.`;
  return trouble(id, {}, sentence, fix);
}

/** A record of numbers; entries that are none are dropped and named. */
function numbers(raw: unknown, key: string, [least, most]: [number, number], issues: Issue[]): Record<string, number> {
  if (raw === undefined || raw === null) return {};
  if (!isObject(raw)) {
    issues.push(
      trouble(
        'setting-wrong-type',
        {},
        `The setting ${key} is not an object; none are used.`,
        `Write ${key} as {"openness": 3}.`,
      ),
    );
    return {};
  }
  const good = Object.entries(raw).filter(([name, value]) => {
    const usable = typeof value === 'number' && value >= least && value <= most;
    if (!usable) {
      const id = typeof value === 'number' ? 'setting-out-of-range' : 'setting-wrong-type';
      const sentence = `${cut(name)} in ${key} is ${cut(JSON.stringify(value))}; the default is used.`;
      issues.push(trouble(id, {}, sentence, `Write a number from ${least} to ${most}.`));
    }
    return usable;
  });
  return Object.fromEntries(good) as Record<string, number>;
}
