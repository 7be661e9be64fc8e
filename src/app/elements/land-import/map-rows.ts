/** One row of the mapping: which kind a value has now, and the mapping with another. */
import type { Mapping, Rule } from '../../../exchange/mapping.ts';
import type { Kind } from '../../../site/types.ts';

function isFor(rule: Rule, attribute: string, value: string): boolean {
  return rule.attribute === attribute && rule.value.toLowerCase() === value.toLowerCase();
}

/** The kind of the first rule for exactly this value; 'leave' when it is left out on purpose, null without a rule. */
export function kindNow({ rules }: Mapping, attribute: string, value: string): Kind | 'leave' | null {
  const rule = rules.find((one) => isFor(one, attribute, value));
  return rule === undefined ? null : (rule.kind ?? 'leave');
}

/** The mapping in which this value has that kind, before all other rules; null leaves it out, undefined takes the rule away. */
export function withRule(mapping: Mapping, attribute: string, value: string, kind: Kind | null | undefined): Mapping {
  const rest = mapping.rules.filter((rule) => !isFor(rule, attribute, value));
  const rules = kind === undefined ? rest : [{ attribute, value, kind }, ...rest];
  return { ...mapping, id: 'own', title: '', rules };
}
