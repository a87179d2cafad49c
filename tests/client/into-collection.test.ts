/** A file on its way into the collection: what stays out and why, and what a lost connection or a stop leaves. */

import { numbersByPicture } from '@enfilade/client/workers/match-in-collection';
import { NOTHING_COLLECTED, sendToCollection } from '@enfilade/client/workers/send-to-collection';
import { checklistFrom } from '@enfilade/shared/checklist-reading';
import { collectionRowFrom } from '@enfilade/shared/collection-in';
import { collectionReadingOf, outOf } from '@enfilade/shared/collection-reading';
import { afterEach, expect, test, vi } from 'vitest';

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const FILE = [
  ['Accession No', 'Title', 'Dimensions', 'Location', 'Value', 'Owner', 'Last shown', 'Image'],
  ['OM 1', 'Eel trap', '90 x 30', 'Bay 4', '£40', 'The Overwick Museum', '1987', 'IMG_7.jpg'],
  ['', 'Mallet', '', '', '', '', '', ''],
  ['om-1', 'Eel trap again', '', '', '', '', '', ''],
  ['L.7', 'Weir', '', '', '', 'The Lower Weir Conservancy', '', ''],
  ['OM 2', 'Day book', '', '', '', '', 'some time ago', ''],
];

test('story: rows without a number, of one number, and lent ones stay out with their places; sizes do not wait', () => {
  const reading = checklistFrom(FILE);
  const told = collectionReadingOf(reading, 'The Overwick Museum');
  expect([told.count, told.going, told.outInAll, told.waitingInAll]).toEqual([5, 2, 3, 1]);
  expect(told.out.map(({ place, value }) => [place, value])).toEqual([
    ['row 3, “Accession No”', 'Mallet'],
    ['row 4, “Accession No”', 'om-1'],
    ['row 5, “Accession No”', 'L.7'],
  ]);
  expect(told.out.map(({ what }) => what)).toEqual([
    expect.stringContaining('No object number'),
    expect.stringContaining('also in row 2'),
    expect.stringContaining('lent by The Lower Weir Conservancy'),
  ]);
  const out = outOf(reading.rows, 'The Overwick Museum');
  const going = reading.rows.filter((row) => !out.has(row)).map((row) => collectionRowFrom(row, true));
  expect(going).toEqual([
    {
      number: 'OM 1',
      title: 'Eel trap',
      dimensions: '90 x 30',
      storage: 'Bay 4',
      shown: '1987-12-31',
      held: { value: '£40' },
    },
    { number: 'OM 2', title: 'Day book' },
  ]);
  const pictures = ['IMG_7.jpg', 'om_2_front.tif', 'OM 1903-2.png', 'cat.png'].map((fileName) => ({
    id: fileName,
    fileName,
  }));
  expect([...numbersByPicture(pictures, reading.rows, ['OM 1903.2', 'OM 1903.3'])]).toEqual([
    ['IMG_7.jpg', 'OM 1'],
    ['om_2_front.tif', 'OM 2'],
    ['OM 1903-2.png', 'OM 1903.2'],
  ]);
});

test('story: a part that does not arrive is sent again; a stop says how many are in, and the rest goes on under the same name', async () => {
  vi.useFakeTimers({ shouldAdvanceTime: true, advanceTimeDelta: 500 });
  const rows = Array.from({ length: 900 }, (_, n) => ({ row: { number: `OM ${n}` }, place: `row ${n + 2}` }));
  const sent: { path: string; rows: number }[] = [];
  let down = 2;
  vi.stubGlobal('fetch', async (path: string, { body }: { body: string }) => {
    const part = JSON.parse(body) as { rows: unknown[] | number; file?: string };
    sent.push({ path, rows: Array.isArray(part.rows) ? part.rows.length : 0 });
    if (sent.length === 2 && down-- > 0) throw new TypeError('network');
    if (path.endsWith('/imports')) return Response.json({ id: 'one' });
    const refused = [{ row: 0, what: 'It is refused.' }];
    return Response.json({ added: (part.rows as unknown[]).length - 1, updated: 0, same: 0, refused });
  });
  let stop = false;
  const sending = { base: '/seat/x', fileName: 'store.csv', stopped: () => stop };
  const first = await sendToCollection(rows, {
    ...sending,
    before: NOTHING_COLLECTED,
    tell: ({ done }) => {
      stop = done === 400;
    },
  });
  expect(first).toMatchObject({ ended: 'stopped', done: 400, of: 900, added: 399, refusedInAll: 1, id: 'one' });
  expect(first.refused).toEqual([{ place: 'row 2', value: 'OM 0', what: 'It is refused.' }]);
  stop = false;
  const rest = await sendToCollection(rows, { ...sending, before: first, tell: () => {} });
  expect(rest).toMatchObject({ ended: 'all', done: 900, added: 897, refusedInAll: 3, id: 'one' });
  expect(sent.filter(({ path }) => path.endsWith('/imports'))).toHaveLength(1);
  expect(sent.map(({ rows: many }) => many)).toEqual([0, 400, 400, 400, 100]);
  vi.stubGlobal('fetch', async () => Response.json({ what: 'Not allowed.', where: 'seat' }, { status: 403 }));
  const refusedWhole = await sendToCollection(rows, { ...sending, before: NOTHING_COLLECTED, tell: () => {} });
  expect(refusedWhole).toMatchObject({ ended: 'broken', what: 'Not allowed.', done: 0 });
});
