import { expect, test } from 'vitest';
import { type LikenessWish, wishFrom, wishText } from '../../client/src/likenesses/wish.ts';
import { toAddress, viewFrom } from '../../client/src/view-address.ts';

test('law: a wish survives its address, whatever its lender is called; what says none is none', () => {
  const wishes: readonly LikenessWish[] = [
    { looks: ['colour', 'shape'], among: 'unplaced' },
    { looks: ['age'], among: 'checklist' },
    { looks: ['size'], among: { from: 'Trust / 1 % of “it”' } },
  ];
  for (const wish of wishes)
    expect(viewFrom(toAddress({ sheet: 'likenesses', wish }))).toEqual({ sheet: 'likenesses', wish });
  expect(wishText({ looks: ['colour', 'shape'], among: 'unplaced' })).toBe('colour-shape/unplaced');
  for (const text of ['', 'colour', 'taste/unplaced', 'colour/nowhere', 'colour/from', 'colour/from/%']) {
    expect([text, wishFrom(text)]).toEqual([text, null]);
  }
  expect(viewFrom('#likenesses')).toEqual({ sheet: 'likenesses' });
});

test('law: in a proposal one looks for likenesses in the proposal', () => {
  const wish: LikenessWish = { looks: ['shape'], among: 'checklist' };
  const address = toAddress({ sheet: 'likenesses', wish }, { kind: 'proposal', id: 'p' });
  expect(address).toBe('#in/p/likenesses/shape/checklist');
  expect(viewFrom(address)).toEqual({ sheet: 'likenesses', wish });
});
