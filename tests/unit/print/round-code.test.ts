import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkSum, decodeRound, encodeRound } from '../../../src/print/round-code.ts';
import type { LonLat } from '../../../src/site/types.ts';

const stop = fc.record({
  number: fc.integer({ min: 0, max: 999_999 }),
  position: fc.tuple(
    fc.double({ min: -180, max: 180, noNaN: true }),
    fc.double({ min: -90, max: 90, noNaN: true }),
  ) as fc.Arbitrary<LonLat>,
});

describe('round code', () => {
  test('CRC-16/CCITT-FALSE of "123456789" is 0x29B1 (catalogue of parametrised CRC algorithms, G. Cook)', () => {
    expect(checkSum([...'123456789'].map((sign) => sign.charCodeAt(0)))).toBe(0x29b1);
  });

  test('comes back with every place within half a step of 1e-5°', () => {
    fc.assert(
      fc.property(fc.array(stop, { maxLength: 60 }), (stops) => {
        const back = decodeRound(encodeRound({ hash: '9f2c41aa', stops }));
        if (back.stops === null) throw new Error(back.reason);
        expect(back.hash).toBe('9f2c41aa');
        expect(back.stops.map((one) => one.number)).toEqual(stops.map((one) => one.number));
        back.stops.forEach((one, i) => {
          expect(Math.abs(one.position[0] - stops[i]!.position[0])).toBeLessThanOrEqual(0.500001e-5);
          expect(Math.abs(one.position[1] - stops[i]!.position[1])).toBeLessThanOrEqual(0.500001e-5);
        });
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  test('forty boxes 100 m apart fit in 300 signs', () => {
    const stops = Array.from({ length: 40 }, (_, i) => ({
      number: i + 1,
      position: [-83 + (i % 7) * 0.0011, 40 + Math.floor(i / 7) * 0.0009] as LonLat,
    }));
    expect(encodeRound({ hash: 'ffffffff', stops }).length).toBeLessThan(300);
  });

  test('any text, and any code with a sign changed, is refused in words or read; it never throws', () => {
    const good = encodeRound({
      hash: null,
      stops: [
        { number: 1, position: [10, 50] },
        { number: 2, position: [10.01, 50] },
      ],
    });
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), (text) => {
        const answer = decodeRound(text);
        expect(answer.stops === null ? answer.reason.length : answer.stops.length).toBeGreaterThanOrEqual(0);
      }),
      { seed: 5, numRuns: 500 },
    );
    let read = 0;
    for (let i = 3; i < good.length; i++) {
      const answer = decodeRound(good.slice(0, i) + (good[i] === 'A' ? 'B' : 'A') + good.slice(i + 1));
      if (answer.stops !== null) read++;
    }
    expect(read).toBe(0);
  });

  test.each([
    ['', 'not a Meadowpost round'],
    ['r2.AAAA', 'newer version'],
    ['r1.', 'damaged'],
    ['r1.!!!!', 'damaged'],
    [`r1.${'A'.repeat(7000)}`, 'too long'],
    ['javascript:alert(1)', 'not a Meadowpost round'],
  ])('%s is refused', (code, why) => {
    const answer = decodeRound(code);
    expect(answer.stops).toBeNull();
    expect(answer.stops === null && answer.reason).toContain(why);
  });

  test('is read with a leading # or #round=', () => {
    const code = encodeRound({ hash: null, stops: [{ number: 7, position: [0, 0] }] });
    for (const front of ['', '#', '#round=']) expect(decodeRound(front + code).stops).toHaveLength(1);
  });

  test('a caller’s nonsense throws', () => {
    expect(() => encodeRound({ hash: null, stops: [{ number: 1, position: [200, 0] }] })).toThrow('not a stop');
    expect(() => encodeRound({ hash: null, stops: [{ number: Number.NaN, position: [0, 0] }] })).toThrow('not a stop');
  });
});
