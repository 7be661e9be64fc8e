/** How a box is drawn: sizes of the look's table, px, and what counts as weak. */
import type { Plan, PlannedBox } from '../../plan-types.ts';

export const boxSizes = {
  /** Middle disc with the number (diameter 25), ring around it, and the gap between. */
  disc: 12.5,
  ring: 4,
  beak: 9,
  /** Second ring of a standing box. */
  standing: 2,
  /** Side of the picture: room for ring, beak, halo and the selection ring. */
  picture: 68,
  /** Boxes nearer than this on the screen are pushed apart when they are a pair. */
  apart: 46,
  target: 44,
} as const;

/** Under this score a box is drawn as weak: notched rust ring and its score in words. Ours: a criterion well below half has then pulled it down. */
export const weakUnder = 60;

export interface BoxLook {
  readonly number: number;
  /** 0–100 */
  readonly score: number;
  /** Degrees clockwise from north. */
  readonly facing: number;
  readonly standing: boolean;
  /** Locked by the person: every plan keeps it where it is. */
  readonly locked: boolean;
  readonly weak: boolean;
  readonly selected: boolean;
}

/** What of a box the map shows. */
export function boxLook(box: PlannedBox, selected: number | null): BoxLook {
  return {
    number: box.number,
    score: Math.round(box.card.score),
    facing: Math.round(box.card.facing.used),
    standing: box.state === 'standing',
    locked: box.locked === true,
    weak: isWeak(box),
    selected: box.number === selected,
  };
}

/** Whether a box is to be looked at: a low score, or its bird's rules refuse it. */
export function isWeak(box: PlannedBox): boolean {
  return box.card.score < weakUnder || box.card.refused.length > 0;
}

/** The same look has the same name, so that a picture is painted once. */
export function lookName(look: BoxLook, theme: string): string {
  const { number, score, facing, standing, locked, weak, selected } = look;
  return `box:${theme}:${number}:${score}:${facing}:${standing ? 's' : ''}${locked ? 'l' : ''}${weak ? 'w' : ''}${selected ? 'x' : ''}`;
}

/** The box of a number, or null. */
export function boxByNumber(plan: Plan | null, number: number | null): PlannedBox | null {
  return plan?.boxes.find((b) => b.number === number) ?? null;
}

/** Seen from far away boxes are drawn smaller, so that a whole park fits a phone. */
export const sizeStops: readonly (readonly [zoom: number, size: number])[] = [
  [12.5, 0.55],
  [15.2, 1],
];

/** The size factor at a zoom. */
export function sizeAt(zoom: number): number {
  const [[fromZoom, from], [toZoom, to]] = sizeStops as [[number, number], [number, number]];
  const t = Math.max(0, Math.min(1, (zoom - fromZoom) / (toZoom - fromZoom)));
  return from + (to - from) * t;
}
