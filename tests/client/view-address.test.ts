import { describe, expect, test } from 'vitest';
import { THE_HANG, toAddress, type View, viewFrom } from '../../client/src/view-address.ts';

describe('the page on screen is in the address', () => {
  test.each<[string, View]>([
    ['#wall/dye:head', { sheet: 'wall', surface: 'dye:head' }],
    ['#vignettes', { sheet: 'vignettes' }],
    ['#vignettes/3', { sheet: 'vignettes', version: 3 }],
    ['#vignettes/3/against/5', { sheet: 'vignettes', version: 3, against: 5 }],
    ['#vignettes/3/against/now', { sheet: 'vignettes', version: 3, against: null }],
    ['#paper/dye:head', { sheet: 'paper', surface: 'dye:head' }],
    ['#waiting', { sheet: 'waiting' }],
    ['#samples', { sheet: 'samples' }],
    ['#deck', { sheet: 'deck', paintId: null }],
    ['#deck/weld', { sheet: 'deck', paintId: 'weld' }],
  ])('law: %s is one page, and that page’s address', (address, view) => {
    expect(viewFrom(address)).toEqual(view);
    expect(toAddress(view, THE_HANG)).toBe(address);
  });

  test.each(['#vignettes/', '#vignettes/x', '#vignettes/-1', '#vignettes/3/against/', '#vignettes/3/against/x'])(
    'law: %s names no version, so the list as it stands is shown',
    (address) => {
      expect(viewFrom(address)).toEqual({ sheet: 'vignettes' });
    },
  );
});
