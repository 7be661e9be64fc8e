/** A kept visit opened again: the correction says all the old one said but what was changed, and stands in its place. */
import { describe, expect, it } from 'vitest';
import { correctionOf, finishDraft, startDraft } from '../../../src/app/field/visit-draft.ts';
import { conflictsIn, mergeVisits, settledVisits } from '../../../src/visits/merge.ts';
import { makeVisit } from '../../../src/visits/visit.ts';

const old = makeVisit({
  id: 'old',
  post: 'p1',
  box: 1,
  date: '2026-05-18',
  time: '15:04',
  zone: -240,
  observer: 'Ann',
  state: 'eggs',
  bird: 'eastern-bluebird',
  material: ['grass'],
  cup: 'neat-cup',
  eggs: { count: 5, color: 'blue', pattern: 'plain', size: 'medium' },
  dead: 1,
  trouble: ['wasps'],
  action: ['photographed'],
  note: 'close to the path',
  photo: 'photo-1.jpg',
  device: 'a',
  madeAt: '2026-05-18T19:05:00Z',
});
const now = { date: '2026-05-20', time: '09:00', zone: -240, instant: '2026-05-20T13:00:00Z' };
const by = { id: 'new', observer: 'Ann', device: 'a', now };

describe('a correction', () => {
  it('carries everything over, day and minute too', () => {
    expect(finishDraft(correctionOf(old), by)).toEqual({ ...old, id: 'new', madeAt: now.instant, replaces: 'old' });
  });
  it('counts in place of the old visit, which stays in the log', () => {
    const right = finishDraft({ ...correctionOf(old), eggCount: 4 }, by);
    const log = mergeVisits([old], [right]);
    expect(log).toHaveLength(2);
    expect(settledVisits(log)).toEqual([right]);
    expect(right.eggs).toEqual({ count: 4, color: 'blue', pattern: 'plain', size: 'medium' });
  });
  it('ends a conflict between two walkers', () => {
    const other = makeVisit({ ...old, id: 'other', observer: 'Ben', state: 'empty', eggs: null, time: '16:00' });
    expect(conflictsIn([old, other])).toHaveLength(1);
    const right = finishDraft({ ...correctionOf(other), state: 'eggs' }, { ...by, observer: 'Ben' });
    expect(conflictsIn([old, other, right])).toEqual([]);
  });
  it('is not what a new look is', () => {
    expect(finishDraft(startDraft('p1', 1, 'empty', null), by).replaces).toBeNull();
  });
});
