import { type Candidate, type StandInThing, standInsFor } from '@enfilade/shared/stand-ins';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const mould: StandInThing = {
  id: 'mould',
  widthMm: 300,
  heightMm: 280,
  sizeKnown: true,
  type: 'copper mould',
  shown: 'hung',
  carries: false,
};
const other = (id: string, more: Partial<Candidate> = {}): Candidate => ({ ...mould, id, had: 'held', ...more });
const ids = (candidates: readonly Candidate[], thing = mould) => standInsFor(thing, candidates).map(({ id }) => id);

describe('what could stand in', () => {
  // The weights are our own rule, no source; these say what they are for.
  test('story: size goes before the part it played, that before whether it is in the house', () => {
    const far = other('far', { widthMm: 620, heightMm: 600 });
    const dial = other('dial', { type: 'clock dial' });
    const lent = other('lent', { had: 'asked', widthMm: 305 });
    expect(ids([far, dial, other('same'), lent])).toEqual(['same', 'dial', 'lent', 'far']);
    const [best, , , worst] = standInsFor(mould, [far, dial, other('same'), lent]);
    expect(best).toEqual({
      id: 'same',
      fit: 1,
      reasons: ['the same size within a hand', 'also a copper mould', 'in the house'],
    });
    expect(worst?.reasons).toEqual(['quite another size', 'also a copper mould', 'in the house']);
  });

  test('story: what carries others is replaced by what can, one not sized counts for half where it is of the same type', () => {
    const shelf = { ...mould, id: 'shelf', carries: true };
    expect(ids([other('board'), other('bench', { carries: true })], shelf)).toEqual(['bench']);
    const torn = other('torn', { sizeKnown: false });
    expect(ids([torn, other('dial', { type: 'clock dial' }), other('far', { widthMm: 900 })])).toEqual([
      'dial',
      'torn',
      'far',
    ]);
    // A thing that stands is no picture's place, however like its size.
    expect(ids([other('vat', { shown: 'standing' }), other('far', { widthMm: 900, had: 'asked' })])).toEqual([
      'far',
      'vat',
    ]);
    // Of another type and quite another size, or of none that is known: no stand-in, however easily had.
    expect(
      ids([other('book', { type: 'book', widthMm: 90 }), other('trap', { type: 'trap', sizeKnown: false })]),
    ).toEqual([]);
    expect(standInsFor(mould, [other('torn', { sizeKnown: false })])[0]?.reasons[0]).toBe('its size is not known');
  });

  test('law: the answer is the same in whatever order they are asked, never the thing itself, each with a fit of 0 to 1', () => {
    const one = fc.record({
      id: fc.constantFrom('a', 'b', 'c', 'd', 'e', 'mould'),
      widthMm: fc.integer({ min: 0, max: 3000 }),
      heightMm: fc.integer({ min: 0, max: 3000 }),
      sizeKnown: fc.boolean(),
      type: fc.constantFrom('', 'copper mould', 'map'),
      shown: fc.constantFrom('hung', 'standing'),
      carries: fc.boolean(),
      had: fc.constantFrom('held', 'agreed', 'asked'),
    } as const);
    const several = fc.uniqueArray(one, { selector: ({ id }) => id });
    fc.assert(
      fc.property(several, fc.boolean(), (candidates, carries) => {
        const thing = { ...mould, carries };
        const found = standInsFor(thing, candidates);
        expect(standInsFor(thing, [...candidates].reverse())).toEqual(found);
        expect(found.map(({ id }) => id)).not.toContain('mould');
        for (const { fit, reasons } of found) {
          expect(fit >= 0 && fit <= 1).toBe(true);
          expect(reasons.length).toBeGreaterThan(0);
        }
      }),
      { seed: 51 },
    );
  });
});
