import { colourNameOf } from '@enfilade/colour/colour-words';
import { FRAME_COLOURS, FRAME_FINISHES, framedColoursOf } from '@enfilade/colour/frames';
import { pictureColoursOf } from '@enfilade/colour/picture-colours';
import { readingOn } from '@enfilade/colour/reading';
import { srgbFromLabD65 } from '@enfilade/colour/spaces';
import { describe, expect, test } from 'vitest';
import { drawn, OIL_VIEW, VERDIGRIS } from './samples.ts';

const colours = pictureColoursOf(OIL_VIEW);

describe('frames', () => {
  test('law: the edge that meets the wall is the frame’s where there is one, else the picture’s', () => {
    expect(framedColoursOf(colours, null)).toEqual({ body: colours.body, edge: colours.edge, framed: false });
    expect(framedColoursOf(colours, { widthMm: 0, colour: 'gilt' }).edge).toBe(colours.edge);
    expect(framedColoursOf(colours, { widthMm: 60, colour: 'picture' })).toMatchObject({
      edge: colours.edge,
      framed: true,
    });
    const gilt = framedColoursOf(colours, { widthMm: 60, colour: 'gilt' });
    expect(gilt.edge).toEqual([{ lab: FRAME_COLOURS.gilt, share: 1 }]);
    expect(gilt.body).toBe(colours.body);
    const measured = { L: 41, a: 3, b: 9 };
    expect(framedColoursOf(colours, { widthMm: 1, colour: measured }).edge[0]!.lab).toEqual(measured);
    for (const widthMm of [-1, Number.NaN]) {
      expect(() => framedColoursOf(colours, { widthMm, colour: 'black' })).toThrow(/widthMm/);
    }
  });

  test('reference: gilt lies at L* 60 to 75 and warm, as practice has it; all can be shown on a screen', () => {
    expect(FRAME_COLOURS.gilt.L).toBeGreaterThanOrEqual(60);
    expect(FRAME_COLOURS.gilt.L).toBeLessThanOrEqual(75);
    expect(FRAME_COLOURS.gilt.b).toBeGreaterThan(20);
    for (const finish of FRAME_FINISHES) expect(srgbFromLabD65(FRAME_COLOURS[finish]).inGamut, finish).toBe(true);
    expect(colourNameOf(FRAME_COLOURS.black)).toMatch(/black|dark grey/);
  });

  test('story: gilt stands off deep red, green and blue; a black frame vanishes on a dark wall (practice, wall colour)', () => {
    const body = [{ lab: { L: 55, a: 4, b: 12 }, share: 1 }];
    const frame = (colour: 'gilt' | 'black') => framedColoursOf({ body, edge: body }, { widthMm: 70, colour });
    for (const wall of [
      { L: 30, a: 38, b: 22 },
      { L: 30, a: -22, b: 8 },
      { L: 28, a: 4, b: -30 },
    ]) {
      expect(readingOn(frame('gilt'), wall).edge.deltaL).toBeGreaterThan(20);
    }
    const dark = { L: 18, a: 1, b: 0 };
    expect(readingOn(frame('black'), dark).edge.deltaE).toBeLessThan(10);
    expect(readingOn(frame('black'), dark).word).toBe('weak');
    expect(readingOn(frame('gilt'), dark).word).not.toBe('weak');
  });

  test('story: framed in gilt, a picture of the wall’s own green is parted from it by the frame, and the words say frame', () => {
    const own = pictureColoursOf(drawn(80, 80, () => VERDIGRIS, 2));
    expect(readingOn(own, VERDIGRIS).reason).toMatch(/edge is the same\. Nothing parts them\.$/);
    const framed = readingOn(framedColoursOf(own, { widthMm: 50, colour: 'gilt' }), VERDIGRIS);
    expect(framed.word).toBe('weak');
    expect(framed.reason).toMatch(/^All of it is the wall's own green\. Only the .* frame parts them\.$/);
  });
});
