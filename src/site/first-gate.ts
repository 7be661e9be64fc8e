/** The first gate: geojson-validation, the one place that knows it. It passes much (bow-ties, 1e308 …), so ours follows. */
import * as validation from 'geojson-validation';

/** What the library says against a GeoJSON object; empty when it is content. It can overflow its stack on hostile input: that is a "no" too. */
export function firstGate(value: unknown): string[] {
  try {
    const said = validation.valid(value, true);
    return Array.isArray(said) ? said.map(String) : [];
  } catch {
    return ['it could not be examined'];
  }
}
