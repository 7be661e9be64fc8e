import { describe, expect, it } from 'vitest';
import { birdById } from '../../../src/birds/index.ts';
import { isPair, pairing } from '../../../src/criteria/pairing.ts';
import { spacing, spacingNeeded } from '../../../src/criteria/spacing.ts';
import { defaultSettings } from '../../../src/site/defaults.ts';
import type { SiteSettings } from '../../../src/site/types.ts';

const site: SiteSettings = { ...defaultSettings, name: 'Test' };
const [bluebird, swallow, kestrel, chickadee] = [
  'eastern-bluebird',
  'tree-swallow',
  'american-kestrel',
  'carolina-chickadee',
].map(birdById) as [
  ReturnType<typeof birdById>,
  ReturnType<typeof birdById>,
  ReturnType<typeof birdById>,
  ReturnType<typeof birdById>,
];
const apart = (metres: number, a = bluebird, b = a, settings = site) =>
  spacing({ at: { x: 0, y: 0 }, bird: a }, { at: { x: metres, y: 0 }, bird: b }, settings);

describe('spacing', () => {
  it('speaks in one unit and names the birds', () => {
    expect(apart(73.152).sentence).toBe('80 yd apart: too close, wants 100 yd between sites of Eastern Bluebird');
    expect(apart(150, bluebird, bluebird, { ...site, units: 'metric' }).sentence).toBe(
      '150 m apart, wants 91 m between sites of Eastern Bluebird',
    );
  });

  it('passes boxes set out at exactly the spacing', () => expect(apart(91.44 - 0.001).ok).toBe(true));

  it('asks nothing between birds that do not matter to each other, and the larger of two wishes', () => {
    expect(apart(3, bluebird, swallow)).toMatchObject({ ok: true, needed: 0 });
    expect(spacingNeeded(birdById('mountain-bluebird'), bluebird).metres).toBeGreaterThanOrEqual(182.88);
  });

  it('moves with the person’s own figure', () => {
    const mine = { ...site, figures: { 'eastern-bluebird.spacing.same': 120 } };
    expect(apart(100, bluebird, bluebird, mine).ok).toBe(false);
  });

  it('lets two boxes a few yards apart pass only as a pair', () => {
    expect(apart(6).ok).toBe(true);
    expect(apart(6, kestrel).ok).toBe(false);
    const apartByHand = spacing(
      { at: { x: 0, y: 0 }, bird: bluebird, pairedWithOther: false },
      { at: { x: 6, y: 0 }, bird: bluebird },
      site,
    );
    expect(apartByHand.ok).toBe(false);
  });
});

describe('pairing', () => {
  it('is best at 15–25 ft, allowed from 5 ft, and no pair beyond', () => {
    expect(pairing(6, bluebird, site)).toMatchObject({ kind: 'pair', score: 1 });
    expect(pairing(1.524, bluebird, site).score).toBeCloseTo(0.6, 9);
    expect(pairing(0.5, bluebird, site).kind).toBe('touching');
    expect(pairing(20, bluebird, site)).toMatchObject({ kind: 'between', score: null });
    expect(pairing(40, bluebird, site).kind).toBe('apart');
    expect(pairing(6, chickadee, site).kind).toBe('between');
  });

  it('never jumps inside a pair', () => {
    for (let metres = 0; metres < 7.6; metres += 0.01) {
      const step = Math.abs(pairing(metres + 0.01, bluebird, site).score! - pairing(metres, bluebird, site).score!);
      expect(step).toBeLessThan(0.02);
    }
  });

  it('says distance and wish in the site’s units', () => {
    expect(pairing(6.096, bluebird, site).sentence).toBe('20 ft apart: a pair, one site; a pair stands 5–25 ft apart');
    expect(isPair(7.62, site)).toBe(true);
    expect(isPair(7.63, site)).toBe(false);
  });
});
