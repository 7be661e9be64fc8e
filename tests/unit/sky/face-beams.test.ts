import { describe, expect, it } from 'vitest';
import { onFace } from '../../../src/sky/beam.ts';
import { faceBeams } from '../../../src/sky/face-beams.ts';
import { makeSunTable } from '../../../src/sky/make-sun-table.ts';

describe.each([
  ['Ohio', -83, 40],
  ['New South Wales', 150, -33],
  ['the equator', 20, 0],
  ['Tromsø', 19, 69.6],
])('the beam on every face over %s', (_, lon, lat) => {
  const table = makeSunTable([lon, lat], '04-01', '07-31', 2026);
  const shaded = Uint8Array.from(table.hour, (hour, i) => (hour > 15 && i % 3 ? 1 : 0));

  it('is the plain sum over unshaded rays', () => {
    const faces = faceBeams(table, shaded);
    for (let facing = 0; facing < 360; facing += 7) {
      let sum = 0;
      for (let i = 0; i < shaded.length; i++) {
        if (!shaded[i]) sum += onFace(table.beam[i]!, table.altitude[i]!, table.rays.azimuth[i]!, facing) * table.step;
      }
      expect(faces[facing]).toBeCloseTo(sum / table.dates.length, 9);
    }
  });

  it('has its brightest face in the afternoon half of the sky', () => {
    const faces = faceBeams(table, null);
    expect(table.brightest).toBe(Math.max(...faces));
    const brightest = faces.indexOf(table.brightest);
    expect(brightest > 180 && brightest < 360).toBe(true);
  });
});
