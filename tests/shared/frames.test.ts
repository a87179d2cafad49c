import { FRAME_COLOURS } from '@enfilade/colour/frames';
import { DEFAULT_THRESHOLDS } from '@enfilade/colour/reading-thresholds';
import {
  addObjects,
  addPaint,
  addRoom,
  correctObject,
  cutPicture,
  place,
  repaint,
  setSetting,
} from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { elevationSheetsOf } from '@enfilade/shared/elevation-sheet';
import { drawnFrameOf } from '@enfilade/shared/frames';
import { Judgements } from '@enfilade/shared/judgements';
import type { ImageFacts } from '@enfilade/shared/protocol';
import { withThreshold, wordsUnder } from '@enfilade/shared/reading-settings';
import { trueSizeOf } from '@enfilade/shared/true-size';
import { describe, expect, test } from 'vitest';

const SHA = 'b'.repeat(64);
const STAMP = { version: 0, at: '12 May 2026, 14:02', by: 'Piet Oyelaran' };
const PAPER = { L: 90, a: 0, b: 6 };
const INK = { L: 40, a: 0, b: 0 };

function facts(sha256: string, edge: { L: number; a: number; b: number }): ImageFacts {
  const at = { widthPx: 100, heightPx: 100, opaqueShare: 1, engine: 'x', cell: { page: 0, index: 0 } };
  return { sha256, ...at, body: [{ lab: INK, share: 1 }], edge: [{ lab: edge, share: 1 }] };
}

function print() {
  const documents = new ShowDocuments();
  const perform = (act: { changes: Parameters<ShowDocuments['write']>[0] }) => documents.write(act.changes, 'test');
  const cornersMm = [0, 0, 0, 0] as const;
  const box = { widthMm: 6000, depthMm: 5000, heightMm: 3200 };
  perform(addRoom({ name: 'Dye room', order: 0, ...box, headFaces: 'north', cornersMm, laserMm: 1000 }, 'dye'));
  perform(addPaint(documents, { name: 'Lime', lab: { L: 91, a: 0, b: 6 } }, 'lime'));
  perform(repaint('dye:head', 'lime'));
  const record = { number: '1', title: 'A print', count: 1, lender: '', source: 'collection' as const };
  perform(addObjects(documents, [{ id: 'p', object: { ...record, dimensionsText: '40 × 30 cm', picture: SHA } }]));
  perform(place(documents, new Map([['p#1', ['dye:head', 2000, 1500, 0, 0]]])));
  const pictures = new Map([
    [SHA, facts(SHA, PAPER)],
    [`${SHA}~keep`, facts(`${SHA}~keep`, { L: 20, a: 0, b: 0 })],
  ]);
  return { documents, judgements: new Judgements(documents, pictures), perform };
}

describe('frames', () => {
  test('story: a print whose margin is the wall’s own colour is parted from it by a black frame', () => {
    const { judgements, perform } = print();
    const bare = judgements.readingOf('p#1');
    expect(bare?.edge.deltaE).toBeLessThan(3);
    perform(correctObject('p', { frame: { kind: 'black', widthMm: 20 } }));
    const framed = judgements.readingOf('p#1');
    expect(framed?.weakestEdge.lab).toEqual(FRAME_COLOURS.black);
    expect(framed?.edge.deltaE).toBeGreaterThan(50);
    perform(correctObject('p', { frame: { kind: 'from the picture', widthMm: 20 } }));
    expect(judgements.readingOf('p#1')?.edge.deltaE).toBe(bare?.edge.deltaE);
  });

  test('law: round a stated size the frame is added, within a framed or a measured one it lies', () => {
    const frame = { kind: 'gilt', widthMm: 50 } as const;
    const object = { number: '1', title: '', count: 1, lender: '', source: 'collection' as const, frame };
    expect(trueSizeOf({ ...object, dimensionsText: '40 × 30 cm' })).toMatchObject({ heightMm: 500, widthMm: 400 });
    const both = { ...object, dimensionsText: '40 × 30 cm', framedText: '52 × 42 cm' };
    expect(trueSizeOf(both)).toMatchObject({ heightMm: 520, widthMm: 420, basis: 'framed' });
    const measured = { heightMm: 510, widthMm: 410, depthMm: null, estimated: false };
    expect(trueSizeOf({ ...both, measured })).toMatchObject({ heightMm: 510, widthMm: 410 });
    const bare = { ...measured, as: 'unframed' as const };
    expect(trueSizeOf({ ...both, measured: bare })).toMatchObject({ heightMm: 610, widthMm: 510 });
    expect(trueSizeOf({ ...both, measured }, { measured: bare })).toMatchObject({ heightMm: 610, widthMm: 510 });
  });

  test('story: what is seen within a frame, and its moulding, make a size that is certain', () => {
    const object = { number: '1', title: '', count: 1, lender: '', source: 'collection' as const };
    const bare = { ...object, dimensionsText: 'Sight: 30 × 24 cm' };
    expect(trueSizeOf(bare)).toMatchObject({ heightMm: 300, widthMm: 240, certain: false });
    const frame = { kind: 'black', widthMm: 25 } as const;
    expect(trueSizeOf({ ...bare, frame })).toMatchObject({
      ...{ heightMm: 350, widthMm: 290, certain: true },
      ...{ basis: 'with its frame', note: null },
    });
    expect(trueSizeOf({ ...bare, frame: { kind: 'from the picture', widthMm: 25 } })).toMatchObject({ heightMm: 300 });
  });

  test('law: a frame of no known kind or width breaks nothing, and is none', () => {
    const { judgements, perform } = print();
    const bare = judgements.readingOf('p#1');
    for (const frame of [{ kind: 'ivory', widthMm: 20 }, { kind: 'none', widthMm: -1 }, { widthMm: 'wide' }, {}]) {
      perform(correctObject('p', { frame: frame as never }));
      expect(judgements.readingOf('p#1')).toEqual(bare);
      expect(judgements.drawnFrameOf('p#1')).toBeNull();
      expect(judgements.sizeOf('p#1')).toMatchObject({ heightMm: 400, widthMm: 300 });
    }
    perform(correctObject('p', { frame: { kind: 'gilt', widthMm: Number.NaN } as never }));
    expect(judgements.readingOf('p#1')?.weakestEdge.lab).toEqual(FRAME_COLOURS.gilt);
    expect(judgements.drawnFrameOf('p#1')).toBeNull();
  });

  test('law: what its photograph shows is not drawn again, and no frame is wider than to the middle', () => {
    const size = { widthMm: 100, heightMm: 80 };
    expect(drawnFrameOf({ kind: 'from the picture', widthMm: 20 }, size)).toBeNull();
    expect(drawnFrameOf({ kind: 'none', widthMm: 20 }, size)).toBeNull();
    expect(drawnFrameOf({ kind: 'gilt', widthMm: 500 }, size)).toEqual({ kind: 'gilt', widthMm: 39 });
  });

  test('story: the elevation on paper has the frame’s sight edge within its outline', () => {
    const { judgements, perform } = print();
    const boxes = () =>
      elevationSheetsOf(judgements, 'dye:head', STAMP).flatMap(({ marks }) =>
        marks.filter(({ kind }) => kind === 'box'),
      ).length;
    const before = boxes();
    perform(correctObject('p', { frame: { kind: 'gilt', widthMm: 40 } }));
    expect(boxes()).toBe(before + 1);
  });
});

test('story: a word on a photograph’s ground changes how its work reads, and taken back it reads as before', () => {
  const { documents, judgements, perform } = print();
  const before = judgements.readingOf('p#1');
  expect(judgements.pictureIdOf('p#1')).toBe(SHA);
  perform(cutPicture(SHA, 'keep'));
  expect(judgements.pictureIdOf('p#1')).toBe(`${SHA}~keep`);
  expect(judgements.photographOf('p#1')).toBe(SHA);
  expect(judgements.readingOf('p#1')?.edge.deltaE).toBeGreaterThan(40);
  documents.write([{ root: 'pictureCuts', key: SHA, value: undefined }], 'test');
  expect(judgements.readingOf('p#1')).toBe(before);
});

describe('a show’s own thresholds', () => {
  test('story: a show that asks more of what carries reads every work anew, and as before once it takes that back', () => {
    const { judgements, perform } = print();
    perform(correctObject('p', { frame: { kind: 'black', widthMm: 20 } }));
    const before = judgements.readingOf('p#1');
    expect(before?.word).toBe('carries');
    perform(setSetting('readingThresholds', { carriesMean: 90 }));
    expect(judgements.readingThresholds().carriesMean).toBe(90);
    expect(judgements.readingOf('p#1')?.word).toBe('holds');
    perform(setSetting('readingThresholds', {}));
    expect(judgements.readingOf('p#1')).toEqual(before);
  });

  test('law: one threshold set is kept beside the default ones, and is forgotten once it is as by default', () => {
    const { judgements, perform } = print();
    const now = () => judgements.readingThresholds();
    const set = (made: ReturnType<typeof withThreshold>) => {
      if ('issue' in made) throw new Error(made.issue);
      perform(setSetting('readingThresholds', made.own));
    };
    expect(wordsUnder(judgements, now())).toEqual({ lost: 0, weak: 1, holds: 0, carries: 0 });
    set(withThreshold(now(), 'weakEdge', 0));
    set(withThreshold(now(), 'weakMean', 20));
    expect(judgements.setting('readingThresholds')).toEqual({ weakEdge: 0, weakMean: 20 });
    expect(wordsUnder(judgements, now()).weak).toBe(0);
    expect(wordsUnder(judgements, DEFAULT_THRESHOLDS).weak).toBe(1);
    set(withThreshold(now(), 'weakEdge', DEFAULT_THRESHOLDS.weakEdge));
    expect(judgements.setting('readingThresholds')).toEqual({ weakMean: 20 });
    expect(withThreshold(now(), 'carriesMean', 3)).toHaveProperty('issue');
    expect(withThreshold(now(), 'lostShare', 1.5)).toEqual({ issue: 'A number from 0 to 1 is wanted.' });
  });

  test('law: thresholds that are none, or out of their order, leave the default ones', () => {
    const { judgements, perform } = print();
    for (const given of [null, 7, 'strict', { weakMean: 'much' }, { carriesMean: 3 }, { ivory: 4 }]) {
      perform(setSetting('readingThresholds', given as never));
      expect(judgements.readingThresholds()).toEqual(DEFAULT_THRESHOLDS);
    }
  });
});
