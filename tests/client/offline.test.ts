import type { Deed, HistoryAnswer } from '@enfilade/shared/deeds';
import type { Place } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { bothSidesOf, ringsOf } from '../../client/src/offline/clashes.ts';
import { deedsSince } from '../../client/src/offline/deeds-since.ts';
import { isPicturePath, seatOf, TO_KEEP_FRESH, withinBound } from '../../client/src/offline/kept-paths.ts';
import { NO_WORK, withWritten } from '../../client/src/offline/kept-work.ts';

const SINCE = '2026-05-12T09:00:00.000Z';
const deed = (minute: number, personId: string, key: string, to?: number, from?: number): Deed => ({
  n: minute,
  at: `2026-05-12T09:${String(minute).padStart(2, '0')}:00.000Z`,
  personId,
  name: personId,
  role: 'curator',
  changes: [{ root: 'places', key, ...(to === undefined ? {} : { to }), ...(from === undefined ? {} : { from }) }],
  more: 0,
});

describe('work while away', () => {
  test('law: a fact changed many times keeps what the others know it as, and what it is here last', () => {
    const once = withWritten(NO_WORK, [{ root: 'places', key: 'a', from: 1, to: 2 }], SINCE);
    const twice = withWritten(once, [{ root: 'places', key: 'a', from: 2, to: 3 }], '2026-05-12T10:00:00.000Z');
    expect(twice.facts).toEqual([{ root: 'places', key: 'a', from: 1, to: 3 }]);
    expect(twice.since).toBe(SINCE);
    expect(withWritten(twice, [{ root: 'places', key: 'a', from: 3 }], null).facts).toEqual([
      { root: 'places', key: 'a', from: 1 },
    ]);
  });

  test('story: what moved on both sides is told with both; what only one side moved, or both alike, is not', () => {
    const facts = [
      { root: 'places', key: 'both', from: 1, to: 2 },
      { root: 'places', key: 'mine', from: 1, to: 2 },
      { root: 'places', key: 'alike', from: 1, to: 2 },
      { root: 'places', key: 'back', from: 1, to: 2 },
      { root: 'places', key: 'taken', from: 1, to: 2 },
      { root: 'objects', key: 'both', from: 1, to: 2 },
    ] as const;
    const deeds = [
      deed(30, 'me', 'both', 2, 9),
      deed(20, 'dov', 'both', 9, 1),
      deed(19, 'dov', 'alike', 2, 1),
      deed(18, 'dov', 'back', 1, 5),
      deed(17, 'dov', 'back', 5, 1),
      deed(16, 'dov', 'taken', undefined, 1),
      deed(15, 'dov', 'theirs', 7, 1),
    ];
    expect(bothSidesOf(facts, deeds, 'me', SINCE)).toEqual([
      { root: 'places', key: 'both', from: 1, mine: 2, theirs: 9, name: 'dov', at: deeds[1]?.at },
      { root: 'places', key: 'taken', from: 1, mine: 2, name: 'dov', at: deeds[5]?.at },
    ]);
  });

  test('story: two who set each carrier on the other, apart, are told of the ring with both places', () => {
    const place = (on: string): Place => [on, 100, 100, 0, 0];
    const mine = place('carrier:shelf#1/0');
    const theirs = place('carrier:bench#1/0');
    const facts = [
      { root: 'places', key: 'bench#1', from: place('dye:floor'), to: mine },
      { root: 'places', key: 'jug#1', from: place('dye:floor'), to: theirs },
    ] as const;
    const theirDeed: Deed = {
      ...deed(20, 'dov', 'shelf#1'),
      changes: [{ root: 'places', key: 'shelf#1', from: place('dye:floor'), to: theirs }],
    };
    const written = new Map([
      ['bench#1', mine],
      ['shelf#1', theirs],
      ['jug#1', theirs],
    ]);
    expect(ringsOf(facts, [theirDeed], 'me', (id) => written.get(id))).toEqual([
      {
        root: 'places',
        key: 'bench#1',
        from: place('dye:floor'),
        mine,
        other: { key: 'shelf#1', from: place('dye:floor'), to: theirs },
        name: 'dov',
        at: theirDeed.at,
      },
    ]);
    written.set('shelf#1', place('dye:floor'));
    expect(ringsOf(facts, [theirDeed], 'me', (id) => written.get(id))).toEqual([]);
  });

  test('law: what they did before my own last word with a connection is answered by it already', () => {
    const before = { ...deed(0, 'me', 'a', 1, 9), at: '2026-05-12T08:59:00.000Z' };
    const theirs = { ...deed(0, 'dov', 'a', 9, 1), at: '2026-05-12T08:58:40.000Z' };
    const facts = [{ root: 'places', key: 'a', from: 1, to: 2 }] as const;
    expect(bothSidesOf(facts, [deed(30, 'me', 'a', 2, 1), before, theirs], 'me', SINCE)).toEqual([]);
  });

  test('law: a day of more deeds than one answer holds is asked for page by page, and once where it is all there', async () => {
    const all = Array.from({ length: 1203 }, (_, n) => ({ ...deed(1, 'dov', 'a', n), n: 1203 - n }));
    const asked: string[] = [];
    const get = async (query: string): Promise<HistoryAnswer> => {
      asked.push(query);
      const before = Number(new URLSearchParams(query).get('before') ?? 1204);
      const left = all.filter(({ n }) => n < before);
      return { deeds: left.slice(0, 500), older: left.length > 500 };
    };
    expect(await deedsSince(get, Date.parse(SINCE))).toEqual(all);
    expect(asked).toHaveLength(3);
    expect(asked.every((query) => query.includes(`since=${encodeURIComponent(SINCE)}`))).toBe(true);
    expect(await deedsSince(async () => ({ deeds: all.slice(0, 2), older: false }), 0)).toHaveLength(2);
  });

  test('law: only what never changes is kept for good, and only facts of a seat are kept afresh', () => {
    const sha = 'a'.repeat(64);
    expect(isPicturePath(`/seat/x/images/${sha}/256.webp`)).toBe(true);
    expect(isPicturePath('/seat/x/images/atlas/0.webp')).toBe(true);
    expect(isPicturePath(`/seat/x/states/${sha}`)).toBe(true);
    for (const path of ['/seat/x/images/facts', '/seat/x/history', '/seat/x/acts/sign-off', '/join/token', '/']) {
      expect(isPicturePath(path)).toBe(false);
    }
    expect(TO_KEEP_FRESH.test('/seat/x/me')).toBe(true);
    expect(TO_KEEP_FRESH.test('/seat/x/seats')).toBe(false);
    expect(seatOf('/seat/abc/')).toBe('abc');
    expect(seatOf('/join/abc')).toBeNull();
    expect(withinBound([1, 2, 3, 4, 5], 3)).toEqual([1, 2]);
    expect(withinBound([1, 2], 3)).toEqual([]);
  });
});
