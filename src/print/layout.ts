/** Where things stand on a map sheet. */
import type { Box } from './display.ts';
import type { Page } from './paper.ts';
import { point, type Style } from './style.ts';

/** All in mm, all inside the safe box. */
export interface MapLayout {
  readonly head: Box;
  /** The map; its edge figures stand `style.edge` mm around it. */
  readonly window: Box;
  /** Scale bar and calibration line, under the map. */
  readonly strip: Box;
  /** North, notes and key: beside the map, or under it on an upright page. */
  readonly panel: Box;
}

/** Height of a sheet's head with its line. */
export function headHeight(style: Style): number {
  const lines = style.variant === 'large-print' ? 2 : 1;
  return style.title * point * 0.78 + lines * style.smallLine + 3.3;
}

/** The map as large as the page allows. */
export function mapLayout({ safe, width, height }: Page, style: Style): MapLayout {
  const head = { ...safe, height: headHeight(style) };
  const lying = width > height;
  const strip = style.variant === 'large-print' ? 21 : 12.5;
  const top = head.y + head.height + style.edge + 1;
  const bottom = safe.y + safe.height;
  const side = lying ? style.column + 3 : 0;
  const below = lying ? 0 : style.strip;
  const window = {
    x: safe.x + style.edge,
    y: top,
    width: safe.width - 2 * style.edge - side,
    height: bottom - strip - below - style.edge - top,
  };
  const stripTop = window.y + window.height + style.edge;
  return {
    head,
    window,
    strip: { x: safe.x, y: stripTop, width: safe.width - side, height: strip },
    panel: lying
      ? {
          x: safe.x + safe.width - style.column,
          y: head.y + head.height + 2,
          width: style.column,
          height: bottom - head.y - head.height - 2,
        }
      : { x: safe.x, y: stripTop + strip, width: safe.width, height: bottom - stripTop - strip },
  };
}
