/** The demo sites shipped with the app: listed in demo-sites/index.json, fetched when opened. */
import list from '../../../demo-sites/index.json';

const urls = import.meta.glob<string>('../../../demo-sites/*.geojson', {
  query: '?url',
  import: 'default',
  eager: true,
});

export interface Demo {
  readonly id: string;
  readonly file: string;
  readonly name: string;
  /** One line on what it shows. */
  readonly shows: string;
}

export const demos: readonly Demo[] = list;

/** The file's text, or null when no demo has that id. */
export async function demoText(id: string): Promise<string | null> {
  const demo = demos.find((d) => d.id === id);
  const url = demo && urls[`../../../demo-sites/${demo.file}`];
  if (!url) return null;
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`the demo's file is missing (${answer.status})`);
  return answer.text();
}
