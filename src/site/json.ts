/** Careful looks at JSON values of unknown shape. */

/** A JSON object nothing is known of. */
export type JsonObject = Readonly<Record<string, unknown>>;

/** Whether a value is a JSON object (no array, not null). */
export function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The object's own member, or undefined: never something of its prototype. */
export function member(value: unknown, key: string): unknown {
  return isObject(value) && Object.hasOwn(value, key) ? value[key] : undefined;
}

/** The members whose keys are not among `known`, in order; undefined when there are none. */
export function otherMembers(value: JsonObject, known: readonly string[]): JsonObject | undefined {
  const others = Object.entries(value).filter(([key]) => !known.includes(key));
  return others.length > 0 ? Object.fromEntries(others) : undefined;
}
