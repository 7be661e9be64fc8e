/** Looks up the `$` names of layer files: the subject's colors, the theme's ink, widths and fonts. */
import type { LayerRow, Subject, ThemeName } from '../../../layers/types.ts';
import type { GroundLook } from '../state.ts';
import { themes } from '../theme.ts';
import { fontNames } from './fonts.ts';

/** What the land is drawn for. */
export interface Look {
  readonly theme: ThemeName;
  readonly ground: GroundLook;
}

/** Over a photo or the lie of the land fills step back; lines and halos stay (look: 18 %). */
export function opacities(ground: GroundLook): { fillOpacity: number; patternOpacity: number } {
  if (ground === 'photo') return { fillOpacity: 0.18, patternOpacity: 0.75 };
  return ground === 'lie' ? { fillOpacity: 0, patternOpacity: 0.35 } : { fillOpacity: 1, patternOpacity: 1 };
}

/** Name of the picture of a subject's pattern, icon or repeated drawing, or of one of its further icons. */
export function pictureName(subject: string, icon = ''): string {
  return icon ? `subject:${subject}:${icon}` : `subject:${subject}`;
}

/** A layer of a subject with every `$` name replaced; throws on a name nobody knows, with the file and layer in the sentence. */
export function resolveLayer(subject: Subject, row: LayerRow, look: Look): LayerRow {
  const names = namesFor(subject, look);
  const replace = (value: unknown): unknown => {
    if (typeof value === 'string' && value.startsWith('$')) {
      const found = names[value.slice(1)];
      if (found === undefined)
        throw new Error(`layers/${subject.id}.json, layer ${row.id}: "${value}" is not a known name`);
      return found;
    }
    if (Array.isArray(value)) return value.map(replace);
    if (value && typeof value === 'object')
      return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, replace(inner)]));
    return value;
  };
  return {
    ...row,
    paint: replace(row.paint ?? {}) as LayerRow['paint'],
    layout: replace(row.layout ?? {}) as LayerRow['layout'],
  };
}

function namesFor(subject: Subject, look: Look): Record<string, unknown> {
  return {
    ...themes[look.theme],
    ...opacities(look.ground),
    ...fontNames,
    self: pictureName(subject.id),
    ...Object.fromEntries(
      Object.keys(subject.icons ?? {}).map((icon) => [`icon:${icon}`, pictureName(subject.id, icon)]),
    ),
    ...subject.colors[look.theme],
  };
}

/** A color of a part (`mark`, `ground`, `outline` …) in a theme; null for `none`. */
export function partColor(name: string, subject: Subject, theme: ThemeName): string | null {
  if (name === 'none') return null;
  const own = subject.colors[theme];
  const ink = themes[theme] as unknown as Record<string, string>;
  if (name === 'ground') return own.fill ?? ink.paper ?? null;
  const found = own[name] ?? ink[name];
  if (!found) throw new Error(`layers/${subject.id}.json: "${name}" is not a known color`);
  return found;
}
