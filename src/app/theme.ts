/** The ink of the notebook and the map in three themes: one table for CSS, map paint and the contrast test. */
import type { ThemeName } from '../../layers/types.ts';

export type { ThemeName };

/** What each color is for; the land's own colors stand in `layers/`. */
export interface Ink {
  /** Notebook page. */
  readonly paper: string;
  /** Buttons, discs, foot. */
  readonly raised: string;
  /** Text, numbers. */
  readonly ink: string;
  /** Second-rank text. */
  readonly quiet: string;
  /** Rules and edges of what is not selected. */
  readonly line: string;
  /** What you can do, score, good marks. */
  readonly sky: string;
  /** Text on a filled button. */
  readonly onSky: string;
  /** Sky of the strip, chosen row. */
  readonly skyWash: string;
  /** Weak, care, too close, hot hours: always with a word or a dash. */
  readonly rust: string;
  /** Behind a rust sentence. */
  readonly rustWash: string;
  /** Done, land words. */
  readonly moss: string;
  /** Unfilled part of a score. */
  readonly ring: string;
  /** Woods on the sun strip, and the dash on them. */
  readonly stripWoods: string;
  readonly stripDash: string;
  /** Land edges. */
  readonly outline: string;
  /** Under every map line and word. */
  readonly halo: string;
  /** Width of land lines, of buttons and of the casing under land lines, px. */
  readonly edge: number;
  readonly rule: number;
  readonly casing: number;
}

const light: Ink = {
  paper: '#FBF8EF',
  raised: '#FFFEFA',
  ink: '#1D2A2C',
  quiet: '#55605C',
  line: '#7F867E',
  sky: '#1C5E97',
  onSky: '#FFFFFF',
  skyWash: '#DCEAF3',
  rust: '#9C4019',
  rustWash: '#F6E3D6',
  moss: '#44632F',
  ring: '#D3D2C6',
  stripWoods: '#44632F',
  stripDash: '#FFFEFA',
  outline: '#2C3A30',
  halo: '#FFFFFF',
  edge: 1.25,
  rule: 1.5,
  casing: 4,
};

const dark: Ink = {
  paper: '#191F20',
  raised: '#22292A',
  ink: '#F0EDE2',
  quiet: '#B4BAB2',
  line: '#7F8883',
  sky: '#8CC4F2',
  onSky: '#0C1A24',
  skyWash: '#22394A',
  rust: '#F0A07A',
  rustWash: '#432B20',
  moss: '#7C9A68',
  ring: '#4A524F',
  stripWoods: '#4A6540',
  stripDash: '#F0EDE2',
  outline: '#E6E3D6',
  halo: '#0E1213',
  edge: 1.25,
  rule: 1.5,
  casing: 4,
};

const sunlight: Ink = {
  paper: '#FFFFFF',
  raised: '#FFFFFF',
  ink: '#000000',
  quiet: '#2E3331',
  line: '#4A4F4C',
  sky: '#0B3F73',
  onSky: '#FFFFFF',
  skyWash: '#D5E6F4',
  rust: '#7A2B0A',
  rustWash: '#FBE3D3',
  moss: '#27471A',
  ring: '#C6C6C0',
  stripWoods: '#27471A',
  stripDash: '#FFFFFF',
  outline: '#000000',
  halo: '#FFFFFF',
  edge: 1.6,
  rule: 2,
  casing: 5,
};

export const themes: Readonly<Record<ThemeName, Ink>> = { light, dark, sunlight };
export const themeNames: readonly ThemeName[] = ['light', 'dark', 'sunlight'];

/** What must be readable on what, with the least WCAG 2 ratio asked and the one expected in each theme (4.5 text, 3 shapes, 7 in sunlight). */
export const contrastPairs: readonly { on: keyof Ink; of: keyof Ink; least: number }[] = [
  { of: 'ink', on: 'paper', least: 7 },
  { of: 'ink', on: 'raised', least: 7 },
  { of: 'ink', on: 'skyWash', least: 7 },
  { of: 'quiet', on: 'paper', least: 4.5 },
  { of: 'quiet', on: 'raised', least: 4.5 },
  { of: 'line', on: 'paper', least: 3 },
  { of: 'sky', on: 'paper', least: 4.5 },
  { of: 'sky', on: 'raised', least: 4.5 },
  { of: 'onSky', on: 'sky', least: 4.5 },
  { of: 'rust', on: 'paper', least: 4.5 },
  { of: 'rust', on: 'raised', least: 4.5 },
  { of: 'rust', on: 'rustWash', least: 4.5 },
  { of: 'ink', on: 'rustWash', least: 7 },
  { of: 'moss', on: 'paper', least: 4.5 },
  { of: 'sky', on: 'ring', least: 3 },
  { of: 'stripDash', on: 'stripWoods', least: 4.5 },
  { of: 'outline', on: 'halo', least: 7 },
  { of: 'ink', on: 'halo', least: 7 },
];

/** WCAG 2 contrast of two colors `#rrggbb`, 1–21. Source: W3C, WCAG 2.2, "relative luminance" and "contrast ratio". */
export function contrast(a: string, b: string): number {
  const [x, y] = [luminance(a), luminance(b)];
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
}

function luminance(color: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const c = Number.parseInt(color.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** The theme as CSS custom properties: `skyWash` → `--sky-wash`. */
export function cssOf(theme: ThemeName): Record<string, string> {
  const out: Record<string, string> = {};
  for (const [name, value] of Object.entries(themes[theme])) {
    const dashed = name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);
    out[`--${dashed}`] = typeof value === 'number' ? `${value}px` : value;
  }
  return out;
}
