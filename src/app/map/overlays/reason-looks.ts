/** How the shapes of the reasons look, bottom first: one table for the map's layers and for the sketch under the hand. */

type Color = 'ink' | 'sky' | 'rust' | 'paper' | 'raised' | 'halo';

/** A line with its halo; an area also has a fill. Widths in px, dashes in line widths, `halo` px wider than the line. */
export interface LineLook {
  readonly role: string;
  readonly color: Color;
  readonly width: number;
  readonly dash: readonly number[] | null;
  readonly halo: number;
  readonly fill: { readonly color: Color; readonly opacity: number } | null;
}

export interface DotLook {
  readonly role: string;
  readonly color: Color;
  readonly rim: Color;
  readonly radius: number;
  readonly rimWidth: number;
}

/** Words at a place, or along a line. */
export interface WordLook {
  readonly role: string;
  readonly color: Color;
  readonly along: boolean;
}

const line = (
  role: string,
  color: Color,
  width: number,
  more: Partial<Pick<LineLook, 'dash' | 'halo' | 'fill'>> = {},
): LineLook => ({ role, color, width, dash: null, halo: 3, fill: null, ...more });

/** Share of a halo that is seen. */
export const haloOpacity = 0.85;

export const lineLooks: readonly LineLook[] = [
  line('disc', 'ink', 1.4, { dash: [1.2, 1.6], fill: { color: 'paper', opacity: 0.16 } }),
  line('ring', 'ink', 1.2, { dash: [6, 5] }),
  line('wedge', 'sky', 1.5, { halo: 2, fill: { color: 'sky', opacity: 0.2 } }),
  line('close', 'rust', 2, { dash: [3, 2.2] }),
  line('woods', 'ink', 1.8),
  line('brush', 'rust', 1.8),
  line('perch', 'ink', 2.2),
  line('nudge', 'sky', 2),
];

const dot = (role: string, color: Color): DotLook => ({ role, color, rim: 'halo', radius: 3.5, rimWidth: 1.5 });

export const dotLooks: readonly DotLook[] = [
  dot('woods-end', 'ink'),
  dot('brush-end', 'rust'),
  dot('close-end', 'raised'),
  { role: 'nudge-end', color: 'raised', rim: 'sky', radius: 6, rimWidth: 2.5 },
];

/** px of the words, and of their halo on each side. */
export const wordSize = 13.5;
export const wordHalo = 2;

export const wordLooks: readonly WordLook[] = [
  { role: 'ring', color: 'ink', along: true },
  { role: 'disc-end', color: 'ink', along: false },
  { role: 'close-end', color: 'rust', along: false },
  { role: 'close-mid', color: 'rust', along: false },
  { role: 'nudge-end', color: 'sky', along: false },
  { role: 'brush-end', color: 'rust', along: false },
  { role: 'woods-end', color: 'ink', along: false },
];
