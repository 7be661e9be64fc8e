/** Draws the parts of a layer file on a canvas: patterns, icons, and drawings along lines. */

import { placeMarks, wrapMarks } from '../../../layers/pattern.ts';
import type { Icon, Part, Pattern, Subject, ThemeName } from '../../../layers/types.ts';
import { partColor } from './look.ts';

/** A picture at `ratio` device pixels a px. */
export interface Picture {
  readonly data: ImageData;
  readonly ratio: number;
}

type Context = OffscreenCanvasRenderingContext2D;

/** The picture of a subject, or null when it has none. Over a photo a crown's ground is left out by the caller's opacity. */
export function subjectPicture(subject: Subject, theme: ThemeName, ratio: number): Picture | null {
  if (subject.pattern) return patternPicture(subject, subject.pattern, theme, ratio);
  const icon = subject.icon ?? (subject.along ? { size: 20, parts: subject.along.parts } : null);
  return icon && iconPicture(subject, icon, theme, ratio);
}

/** The picture of one icon of a subject. */
export function iconPicture(subject: Subject, icon: Icon, theme: ThemeName, ratio: number): Picture {
  return paintPicture(icon.size, icon.size, ratio, (context) => {
    context.translate(icon.size / 2, icon.size / 2);
    drawParts(context, icon.parts, subject, theme);
  });
}

/**
 * A tile that repeats without a seam. The map grows a pattern up to twofold between two zooms: telling it a denser picture keeps it between
 * 0.7 and 1.4 of its size.
 */
function patternPicture(subject: Subject, pattern: Pattern, theme: ThemeName, ratio: number): Picture {
  const painted = paintPicture(pattern.tile, pattern.tile, ratio, (context) => {
    for (const placed of wrapMarks(pattern, placeMarks(pattern))) {
      const drawing = pattern.marks[placed.mark];
      if (!drawing) continue;
      context.save();
      context.translate(placed.x, placed.y);
      context.rotate((placed.turn * Math.PI) / 180);
      context.scale(placed.size, placed.size);
      drawParts(context, drawing.parts, subject, theme);
      context.restore();
    }
  });
  return { data: painted.data, ratio: ratio * Math.SQRT2 };
}

/** Runs `paint` on a canvas of `width` × `height` px and takes its pixels. */
export function paintPicture(width: number, height: number, ratio: number, paint: (context: Context) => void): Picture {
  const canvas = new OffscreenCanvas(Math.round(width * ratio), Math.round(height * ratio));
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('This browser gives no 2D canvas.');
  context.scale(ratio, ratio);
  context.lineJoin = 'round';
  context.lineCap = 'round';
  paint(context);
  return { data: context.getImageData(0, 0, canvas.width, canvas.height), ratio };
}

/** Draws parts around 0,0, bottom first. */
export function drawParts(context: Context, parts: readonly Part[], subject: Subject, theme: ThemeName): void {
  for (const part of parts) {
    const path = new Path2D(part.path);
    const fill = partColor(part.fill, subject, theme);
    const stroke = partColor(part.stroke, subject, theme);
    if (fill) {
      context.fillStyle = fill;
      context.fill(path);
    }
    if (stroke && part.width > 0) {
      context.strokeStyle = stroke;
      context.lineWidth = part.width;
      context.stroke(path);
    }
  }
}
