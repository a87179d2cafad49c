import { buildDemoShow } from '@enfilade/server/demo/show';
import { rangedText } from '@enfilade/shared/caution-marks';
import { setSetting } from '@enfilade/shared/commands';
import { alongLine } from '@enfilade/shared/dimension-lines';
import { elevationSheetsOf } from '@enfilade/shared/elevation-sheet';
import { Judgements } from '@enfilade/shared/judgements';
import { A3, type SheetText, textWidthMm } from '@enfilade/shared/sheet';
import { WALL_SIDES } from '@enfilade/space/room';
import { describe, expect, test } from 'vitest';

function areaOf({ text, xMm, yMm, sizeMm, face, anchor = 'start' }: SheetText) {
  // The widths are generous by a tenth: words are broken by them, so that none runs out of its column.
  const width = textWidthMm(text, sizeMm, face) * 0.9;
  const left = xMm - (anchor === 'end' ? width : anchor === 'middle' ? width / 2 : 0);
  return { text, left, right: left + width, top: yMm - sizeMm * 0.68, bottom: yMm };
}

describe('a printed elevation', () => {
  test('story: cautions that differ in their figures alone are said once, from the least to the most', () => {
    const text = (cm: string) => `Its centre is ${cm} cm above the floor, above reach.`;
    expect(rangedText([text('252.8'), text('283.5'), text('216.1')])).toBe(text('216.1 to 283.5'));
    expect(rangedText([text('252.8'), text('252.8')])).toBe(text('252.8'));
    expect(rangedText(['No weight recorded.', 'No weight recorded.'])).toBe('No weight recorded.');
  });

  test('story: along the wall the largest work has both its edges, and no figure runs into another', () => {
    const small = Array.from({ length: 12 }, (_, n) => ({ xMm: 200 + n * 500, widthMm: 240 }));
    const xOnPaper = (mm: number) => 32 + mm / 20;
    const figures = (works: readonly { xMm: number; widthMm: number }[]) =>
      alongLine(6000, works, xOnPaper, 0).flatMap((mark) =>
        mark.kind === 'text' && mark.sizeMm === 2.6 ? [{ text: mark.text, xMm: mark.xMm }] : [],
      );
    const all = figures([...small, { xMm: 2330, widthMm: 3100 }]);
    expect(all.map(({ text }) => text)).toEqual(expect.arrayContaining(['0', '78.0', '388.0', '600.0']));
    const places = all.map(({ xMm }) => xMm).sort((a, b) => a - b);
    for (const [index, x] of places.entries())
      expect(x - (places[index - 1] ?? Number.NEGATIVE_INFINITY)).toBeGreaterThan(10);
    expect(figures([{ xMm: 100, widthMm: 150 }]).map(({ text }) => text)).toEqual(['0', '600.0']);
  });

  test('story: on the sheets of every wall of the demo no words run into others or off the paper', async () => {
    const documents = await buildDemoShow({
      large: false,
      draw: async () => Buffer.from(''),
      takePicture: async (_, name) => name,
    });
    const judgements = new Judgements(documents, { get: () => undefined });
    let sheets = 0;
    for (const roomId of documents.all('rooms').keys()) {
      // From the second room on with the works' labels.
      if (sheets > 0) documents.write(setSetting('labelsOnWalls', true).changes, 'test');
      for (const side of WALL_SIDES) {
        for (const sheet of elevationSheetsOf(judgements, `${roomId}:${side}`, { version: 2, at: '12 May', by: 'x' })) {
          sheets += 1;
          const areas = sheet.marks.flatMap((mark) => (mark.kind === 'text' ? [areaOf(mark)] : []));
          const met = areas.flatMap((a, index) =>
            areas
              .slice(index + 1)
              .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
              .map((b) => `${sheet.title}: ${a.text} | ${b.text}`),
          );
          expect(met).toEqual([]);
          expect(areas.filter(({ left, right }) => left < 4 || right > A3.widthMm - 4)).toEqual([]);
        }
      }
    }
    expect(sheets).toBeGreaterThanOrEqual(12);
  });
});
