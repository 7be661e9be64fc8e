/** A swatch of the key, drawn from the very paint of the map's layers, so that it cannot differ from the map. */
import type { LayerRow, LegendRow, Subject, ThemeName } from '../../../../layers/types.ts';
import { iconPicture, subjectPicture } from '../../map/draw-parts.ts';
import { pictureName, resolveLayer } from '../../map/look.ts';

/** Size of a swatch, px. */
export const swatchSize = { width: 44, height: 28 };

type Paint = Record<string, unknown>;

/** Draws a row's layers on a canvas of `swatchSize` at 2 device pixels a px. */
export function drawSwatch(canvas: HTMLCanvasElement, subject: Subject, row: LegendRow, theme: ThemeName): void {
  const context = canvas.getContext('2d');
  if (!context) return;
  canvas.width = swatchSize.width * 2;
  canvas.height = swatchSize.height * 2;
  context.scale(2, 2);
  for (const id of row.layers) {
    const layer = subject.layers.find((l) => l.id === id);
    if (layer) drawLayer(context, subject, row, resolveLayer(subject, layer, { theme, ground: 'drawing' }), theme);
  }
}

function drawLayer(
  context: CanvasRenderingContext2D,
  subject: Subject,
  row: LegendRow,
  layer: LayerRow,
  theme: ThemeName,
): void {
  const paint = (layer.paint ?? {}) as Paint;
  const path = new Path2D(shapes[row.swatch]);
  if (layer.type === 'fill') fill(context, subject, paint, path, theme);
  if (layer.type === 'line') stroke(context, paint, path);
  if (layer.type === 'symbol') symbols(context, subject, row, layer, theme);
}

const shapes = { area: 'M4 4 L40 4 L40 24 L4 24 Z', line: 'M2 14 L42 14', point: '' } as const;

function fill(context: CanvasRenderingContext2D, subject: Subject, paint: Paint, path: Path2D, theme: ThemeName): void {
  context.save();
  context.clip(path);
  const picture = paint['fill-pattern'] ? subjectPicture(subject, theme, 2) : null;
  if (picture) tile(context, picture.data);
  else {
    context.fillStyle = String(paint['fill-color']);
    context.fill(path);
  }
  context.restore();
}

function tile(context: CanvasRenderingContext2D, data: ImageData): void {
  const held = new OffscreenCanvas(data.width, data.height);
  held.getContext('2d')?.putImageData(data, 0, 0);
  for (let x = 0; x < swatchSize.width; x += data.width / 2)
    for (let y = 0; y < swatchSize.height; y += data.height / 2)
      context.drawImage(held, x, y, data.width / 2, data.height / 2);
}

function stroke(context: CanvasRenderingContext2D, paint: Paint, path: Path2D): void {
  const width = atZoom(paint['line-width']);
  const dash = paint['line-dasharray'] as number[] | undefined;
  context.strokeStyle = String(paint['line-color']);
  context.lineWidth = width;
  context.setLineDash((dash ?? []).map((d) => d * width));
  context.lineJoin = 'round';
  context.stroke(path);
  context.setLineDash([]);
}

/** The value at about zoom 16 of a zoom expression, or the number itself. */
function atZoom(value: unknown): number {
  if (typeof value === 'number') return value;
  if (!Array.isArray(value) || value[0] !== 'interpolate') return 1;
  const at = value.indexOf(16);
  const found = value[(at < 0 ? 3 : at) + 1];
  return typeof found === 'number' ? found : 1;
}

function symbols(
  context: CanvasRenderingContext2D,
  subject: Subject,
  row: LegendRow,
  layer: LayerRow,
  theme: ThemeName,
): void {
  const wanted = layer.layout?.['icon-image'];
  const named = Object.entries(subject.icons ?? {}).find(([name]) => pictureName(subject.id, name) === wanted)?.[1];
  const picture = named
    ? iconPicture(subject, named, theme, 2)
    : subjectPicture({ ...subject, pattern: null }, theme, 2);
  if (!picture) return;
  const held = new OffscreenCanvas(picture.data.width, picture.data.height);
  held.getContext('2d')?.putImageData(picture.data, 0, 0);
  const side = Math.min(picture.data.width / 2, row.swatch === 'point' ? 28 : 20);
  const step = Math.min(26, subject.along?.every ?? 26);
  const places = row.swatch === 'line' ? steps(step) : [swatchSize.width / 2];
  for (const x of places) context.drawImage(held, x - side / 2, 14 - side / 2, side, side);
}

function steps(every: number): number[] {
  const count = Math.max(1, Math.floor(swatchSize.width / every));
  return Array.from({ length: count }, (_, i) => swatchSize.width / 2 + (i - (count - 1) / 2) * every);
}
