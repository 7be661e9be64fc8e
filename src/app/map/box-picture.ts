/** Paints the beaked disc: number, score as a ring clockwise from noon, a beak where the hole faces. */
import type { Ink } from '../theme.ts';
import { type BoxLook, boxSizes } from './box-look.ts';
import { type Picture, paintPicture } from './draw-parts.ts';

type Context = OffscreenCanvasRenderingContext2D;

const full = 2 * Math.PI;
const noon = -Math.PI / 2;

/** The picture of a box, its middle in the middle. */
export function boxPicture(look: BoxLook, ink: Ink, ratio: number): Picture {
  const { picture, disc, ring, standing } = boxSizes;
  const rim = disc + ring;
  return paintPicture(picture, picture, ratio, (context) => {
    context.translate(picture / 2, picture / 2);
    const outer = rim + (look.standing ? 2 + standing : 0);
    beak(context, look, outer, ink.halo, 4.5);
    circle(context, outer + 2.2, ink.halo);
    if (look.selected) selection(context, outer, ink);
    if (look.standing) outline(context, outer - standing / 2, standing, ink.ink);
    beak(context, look, outer, ink.ink, 0);
    circle(context, rim, ink.ink);
    scoreRing(context, look, ink);
    circle(context, disc - 0.6, look.selected ? ink.ink : ink.raised);
    outline(context, disc - 0.6, 1.2, ink.ink);
    number(context, look, ink);
    if (look.locked) lock(context, look, outer, ink);
  });
}

/** A small padlock on the rim, across from the beak; upright whichever way that is. */
function lock(context: Context, look: BoxLook, rim: number, ink: Ink): void {
  const turn = ((look.facing + 180) * Math.PI) / 180;
  context.save();
  context.translate(Math.sin(turn) * (rim + 1), -Math.cos(turn) * (rim + 1));
  const body = new Path2D('M-4.5 -1 H4.5 V5.5 H-4.5 Z');
  const bow = new Path2D('M-2.6 -1 V-3 A2.6 2.6 0 0 1 2.6 -3 V-1');
  for (const [color, width] of [
    [ink.halo, 5],
    [ink.ink, 1.7],
  ] as const) {
    context.strokeStyle = color;
    context.lineWidth = width;
    context.lineJoin = 'round';
    context.stroke(bow);
    if (color === ink.halo) context.stroke(body);
  }
  context.fillStyle = ink.ink;
  context.fill(body);
  context.restore();
}

function circle(context: Context, radius: number, color: string): void {
  context.beginPath();
  context.arc(0, 0, radius, 0, full);
  context.fillStyle = color;
  context.fill();
}

function outline(context: Context, radius: number, width: number, color: string): void {
  context.beginPath();
  context.arc(0, 0, radius, 0, full);
  context.strokeStyle = color;
  context.lineWidth = width;
  context.stroke();
}

function selection(context: Context, outer: number, ink: Ink): void {
  circle(context, outer + 5.5, ink.sky);
  circle(context, outer + 2.4, ink.halo);
}

/** Unfilled track, then the score; a weak box's arc is rust and cut into notches, so that it stands out without color. */
function scoreRing(context: Context, look: BoxLook, ink: Ink): void {
  const radius = boxSizes.disc + boxSizes.ring / 2 - 0.6;
  context.lineCap = 'butt';
  outline(context, radius, boxSizes.ring - 1, ink.ring);
  context.strokeStyle = look.weak ? ink.rust : ink.sky;
  context.lineWidth = boxSizes.ring - 0.6;
  const end = (Math.max(0, Math.min(100, look.score)) / 100) * full;
  const step = look.weak ? full / 14 : full;
  for (let from = 0; from < end; from += step) {
    const to = Math.min(end, from + (look.weak ? step * 0.62 : step));
    context.beginPath();
    context.arc(0, 0, radius, noon + from, noon + to);
    context.stroke();
  }
}

/** A beak on the rim, its tip where the hole faces. */
function beak(context: Context, look: BoxLook, rim: number, color: string, halo: number): void {
  context.save();
  context.rotate((look.facing * Math.PI) / 180);
  context.beginPath();
  context.moveTo(-5.6, -rim + 1.6);
  context.lineTo(0, -rim - boxSizes.beak);
  context.lineTo(5.6, -rim + 1.6);
  context.closePath();
  context.fillStyle = color;
  context.strokeStyle = color;
  context.lineWidth = halo;
  if (halo > 0) context.stroke();
  context.fill();
  context.restore();
}

function number(context: Context, look: BoxLook, ink: Ink): void {
  const size = look.number > 99 ? 10 : 13;
  context.font = `700 ${size}px "Source Serif 4", Georgia, serif`;
  context.textAlign = 'center';
  context.textBaseline = 'alphabetic';
  context.fillStyle = look.selected ? ink.raised : ink.ink;
  context.fillText(String(look.number), 0, size * 0.34);
}
