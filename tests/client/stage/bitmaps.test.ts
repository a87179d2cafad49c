import { describe, expect, test } from 'vitest';
import { opaqueIn } from '../../../client/src/stage/alpha-mask.ts';
import { BitmapShelf } from '../../../client/src/stage/bitmap-shelf.ts';
import { levelFor } from '../../../client/src/stage/bitmaps.ts';

class Bitmap {
  closed = 0;
  close(): void {
    this.closed += 1;
  }
}

describe('the shelf of decoded pictures', () => {
  test('story: the least lately used is closed when there is no more room, once', () => {
    const shelf = new BitmapShelf<Bitmap>(300);
    const [a, b, c, d] = [new Bitmap(), new Bitmap(), new Bitmap(), new Bitmap()];
    shelf.put('a', a, 100, 1);
    shelf.put('b', b, 100, 1);
    shelf.put('c', c, 100, 1);
    shelf.use('a', 2);
    shelf.put('d', d, 100, 3);
    expect([a.closed, b.closed, c.closed, d.closed]).toEqual([0, 1, 0, 0]);
    expect(shelf.heldBytes).toBe(300);
    shelf.clear();
    expect([a.closed, b.closed, c.closed, d.closed]).toEqual([1, 1, 1, 1]);
    expect(shelf.heldBytes).toBe(0);
  });

  test('story: what the same draw uses is never pushed out, even over the limit', () => {
    const shelf = new BitmapShelf<Bitmap>(150);
    const [a, b] = [new Bitmap(), new Bitmap()];
    shelf.put('a', a, 100, 5);
    expect(shelf.hasRoomFor(100, 5)).toBe(false);
    expect(shelf.hasRoomFor(100, 6)).toBe(true);
    shelf.put('b', b, 100, 5);
    expect(a.closed).toBe(0);
  });

  test('story: the same picture put again closes the one it replaces', () => {
    const shelf = new BitmapShelf<Bitmap>(300);
    const [a, again] = [new Bitmap(), new Bitmap()];
    shelf.put('a', a, 100, 1);
    shelf.put('a', again, 120, 1);
    expect([a.closed, again.closed, shelf.heldBytes]).toEqual([1, 0, 120]);
  });

  test('law: a shelf without room is a mistake of ours', () => {
    expect(() => new BitmapShelf(0)).toThrow(RangeError);
  });
});

describe('which picture, and where it is opaque', () => {
  test('reference: miniature to 76 device px, then 256, from 300 on 1024 (own thresholds)', () => {
    expect([20, 76, 77, 300, 301, 4000].map(levelFor)).toEqual([64, 64, 256, 256, 1024, 1024]);
  });

  test('story: a round dial is not taken hold of by its corner', () => {
    const side = 64;
    const dial = Uint8ClampedArray.from({ length: side * side }, (_, i) =>
      Math.hypot((i % side) - 31.5, Math.floor(i / side) - 31.5) < 32 ? 255 : 0,
    );
    expect(opaqueIn(dial, side, side, 0.5, 0.5)).toBe(true);
    expect(opaqueIn(dial, side, side, 0.02, 0.5)).toBe(true);
    expect(opaqueIn(dial, side, side, 0.06, 0.06)).toBe(false);
    expect(opaqueIn(dial, side, side, 1, 1)).toBe(false);
  });
});
