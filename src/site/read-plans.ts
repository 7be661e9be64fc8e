/** The settings `order` and `plans`: each entry checked by itself; what cannot be used is dropped and named. */
import { trouble } from './issues.ts';
import { isObject, member } from './json.ts';
import { type KeptBox, type KeptPlan, keptStates, planSettings } from './kept-plan.ts';
import { cut } from './label.ts';
import type { Issue, LonLat, SiteSettings } from './types.ts';

/** Post ids in the order of the walk, each once. */
export function readOrder(raw: unknown, issues: Issue[]): string[] {
  const list = listOf(raw, 'order', '["post-3", "post-1"]', issues);
  const ids = list.filter((id) => typeof id === 'string' || typeof id === 'number').map(String);
  const once = [...new Set(ids)];
  if (once.length < list.length) {
    const sentence = `${list.length - once.length} of the ${list.length} entries of order are no ids or stand there twice; they are not used.`;
    issues.push(trouble('order-unreadable', {}, sentence, 'Write each post’s id once, in walking order.'));
  }
  return once;
}

/** Plans kept by name. `settingsOf` reads the settings a plan was made with, through the same gate as the site's own. */
export function readPlans(
  raw: unknown,
  issues: Issue[],
  settingsOf: (raw: unknown) => { settings: SiteSettings; issues: readonly Issue[] },
): KeptPlan[] {
  const plans = new Map<string, KeptPlan>();
  for (const [i, one] of listOf(raw, 'plans', '[{"name": "Plan 1", …}]', issues).entries()) {
    const said = planTrouble(one) ?? (plans.has(String(member(one, 'name'))) ? 'has a name that is taken' : null);
    const made = said === null ? settingsOf(member(one, 'settings')) : null;
    const bad = made?.issues.find(({ severity }) => severity === 'warning');
    if (said !== null || !made || bad) {
      const sentence = `Kept plan ${i + 1} ${said ?? `has settings that cannot be used: ${bad?.sentence}`}; it is not used.`;
      issues.push(trouble('plan-unreadable', {}, sentence, 'Keep the plan again in the program.'));
      continue;
    }
    const plan = { ...(one as KeptPlan), settings: planSettings(made.settings) };
    plans.set(plan.name, plan);
  }
  return [...plans.values()];
}

function listOf(raw: unknown, key: string, example: string, issues: Issue[]): readonly unknown[] {
  if (raw === undefined || raw === null) return [];
  if (Array.isArray(raw)) return raw;
  const sentence = `The setting ${key} is not a list; none is used.`;
  issues.push(trouble('setting-wrong-type', {}, sentence, `Write it as ${example}.`));
  return [];
}

const isAmount = (value: unknown) => typeof value === 'number' && Number.isFinite(value) && value >= 0;

function planTrouble(raw: unknown): string | null {
  const name = member(raw, 'name');
  if (typeof name !== 'string' || name.trim() === '') return 'has no name';
  const figure = ['score', 'sites', 'metres', 'minutes'].find((key) => !isAmount(member(raw, key)));
  if (figure) return `(${cut(name)}) gives no ${figure}`;
  if (typeof member(raw, 'proof') !== 'string') return `(${cut(name)}) says nothing of its proof`;
  if (!isObject(member(raw, 'settings'))) return `(${cut(name)}) has no settings`;
  const boxes = member(raw, 'boxes');
  if (!Array.isArray(boxes)) return `(${cut(name)}) has no boxes`;
  const bad = boxes.findIndex((box) => !isBox(box));
  return bad < 0 ? null : `(${cut(name)}) has a box that cannot be read, the ${bad + 1}. of its list`;
}

function isBox(raw: unknown): raw is KeptBox {
  const number = member(raw, 'number');
  const score = member(raw, 'score');
  const suggested = member(raw, 'suggested');
  return (
    Number.isInteger(number) &&
    Number(number) > 0 &&
    [member(raw, 'post'), member(raw, 'bird')].every((text) => typeof text === 'string' && text !== '') &&
    isPlace(member(raw, 'at')) &&
    (score === null || (isAmount(score) && Number(score) <= 100)) &&
    (suggested === undefined || typeof suggested === 'boolean') &&
    keptStates.some((state) => state === member(raw, 'state'))
  );
}

function isPlace(raw: unknown): raw is LonLat {
  if (!Array.isArray(raw) || raw.length !== 2 || !raw.every(Number.isFinite)) return false;
  return Math.abs(raw[0]) <= 180 && Math.abs(raw[1]) <= 90;
}
