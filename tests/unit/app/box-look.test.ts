import { describe, expect, it } from 'vitest';
import { boxRows } from '../../../src/app/elements/key/box-rows.ts';
import { boxLook, lookName } from '../../../src/app/map/box-look.ts';
import { en } from '../../../src/app/words/en.ts';
import { invented } from '../print/fixture.ts';

const [box] = invented({ boxes: 1 }).plan.boxes;

describe('a locked box', () => {
  it('has a picture of its own, and keeps the plain one when it is unlocked', () => {
    const name = (locked?: boolean) => lookName(boxLook({ ...box!, locked }, null), 'light');
    expect(name(true)).not.toBe(name());
    expect(name(false)).toBe(name());
  });

  it('has a row in the key only where there is one', () => {
    const words = (locked: boolean) => boxRows({ weak: false, standing: false, locked }, en).map((row) => row.word);
    expect(words(true)).toContain(en.posts.legend.locked);
    expect(words(false)).not.toContain(en.posts.legend.locked);
  });
});
