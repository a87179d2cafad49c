import type { LabD65 } from '@enfilade/colour/lab';
import { rankPaints } from '@enfilade/colour/rank-paints';
import { readingOn } from '@enfilade/colour/reading';
import type { DeskWork } from '@enfilade/shared/colour-desk';
import { correctObject, setSetting } from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import { answersOf, type WorkWish, wallsBeside, wishedWorksOf } from '@enfilade/shared/paint-wishes';
import type { ImageFacts } from '@enfilade/shared/protocol';
import { describe, expect, test } from 'vitest';
import { sampleShow } from './sample-show.ts';

const COLOURS: Readonly<Record<string, LabD65>> = {
  green: { L: 35, a: -22, b: -3 },
  red: { L: 45, a: 60, b: 35 },
  yellow: { L: 79, a: -1, b: 59 },
};

function factsOf(sha256: string): ImageFacts | undefined {
  const lab = COLOURS[sha256];
  if (lab === undefined) return undefined;
  const swatches = [{ lab, share: 1 }];
  const cell = { page: 0, index: 0 };
  return { sha256, widthPx: 9, heightPx: 9, body: swatches, edge: swatches, opaqueShare: 1, engine: 'test', cell };
}

/** The oil is green, the hanging yellow; of the blocks all are red but the second, which is green. */
function asked() {
  const { documents, history } = sampleShow();
  const set = (root: 'objects' | 'pieces', key: string, value: string): void => {
    history.perform({ name: 'picture', changes: [{ root, key: `${key}/picture`, value }] });
  };
  set('objects', 'oil', 'green');
  set('objects', 'hanging', 'yellow');
  set('objects', 'blocks', 'red');
  set('pieces', 'blocks#2', 'green');
  const work = (objectId: string, count: number): DeskWork => ({
    id: `${objectId}@`,
    objectId,
    pieces: Array.from({ length: count }, (_, n) => `${objectId}#${n + 1}`),
    surface: null,
    title: objectId,
    number: objectId,
  });
  const wishes: WorkWish[] = [
    { work: work('oil', 1), wish: 'let carry' },
    { work: work('blocks', 60), wish: 'let carry' },
    { work: work('hanging', 1), wish: 'keep quiet' },
    { work: work('trap', 1), wish: 'let carry' },
  ];
  return { judgements: new Judgements(documents, { get: factsOf }), history, wishes };
}

describe('what is asked of a paint', () => {
  test('law: each picture stands once and a work of many counts as one; what has no picture is not asked about', () => {
    const { judgements, wishes } = asked();
    const { wished, owners } = wishedWorksOf(judgements, wishes);
    expect(owners).toEqual([0, 1, 1, 2]);
    expect(wished.map(({ wish, weight }) => [wish, weight])).toEqual([
      ['let carry', 1],
      ['let carry', 0.5],
      ['let carry', 0.5],
      ['keep quiet', 1],
    ]);
  });

  test('story: the paint that loses the oil comes after one on which it carries, and says what is not as asked', () => {
    const { judgements, wishes } = asked();
    const { wished, owners } = wishedWorksOf(judgements, wishes.slice(0, 1));
    const deck = [
      { name: 'Verdigris', lab: { L: 33, a: -25, b: -4 } },
      { name: 'Weld', lab: { L: 80, a: -2, b: 60 } },
    ];
    const { top } = rankPaints(deck, wished);
    expect(top.map(({ paint }) => paint.name)).toEqual(['Weld', 'Verdigris']);
    const [weld, verdigris] = top.map((one) => answersOf(one, wishes, owners));
    expect(weld).toMatchObject([{ met: true, reading: { word: 'carries' } }]);
    expect(verdigris).toMatchObject([{ met: false, reading: { word: 'lost' } }]);
  });

  test('law: a work of several pictures answers with its worst, those not met stand first', () => {
    const { judgements, wishes } = asked();
    const { wished, owners } = wishedWorksOf(judgements, wishes);
    const { top } = rankPaints([{ lab: { L: 33, a: -25, b: -4 } }], wished);
    const answers = answersOf(top[0]!, wishes, owners);
    expect(answers).toHaveLength(3);
    const blocks = answers.find(({ work }) => work.objectId === 'blocks');
    expect(blocks).toMatchObject({ met: false, reading: { word: 'lost' } });
    const met = answers.map((answer) => answer.met);
    expect(met).toEqual([...met].sort((a, b) => Number(a) - Number(b)));
  });

  test('law: a ranked paint reads of a work what its card would read, in its frame and by the show’s own thresholds', () => {
    const { judgements, wishes, history } = asked();
    history.perform(correctObject('oil', { frame: { kind: 'gilt', widthMm: 60 } }));
    history.perform(setSetting('readingThresholds', { carriesMean: 20 }));
    const { wished } = wishedWorksOf(judgements, wishes.slice(0, 1));
    const thresholds = judgements.readingThresholds();
    for (const lab of [
      { L: 33, a: -25, b: -4 },
      { L: 66, a: 7, b: 38 },
      { L: 80, a: -2, b: 60 },
    ]) {
      const { top } = rankPaints([{ lab }], wished, { thresholds });
      const reading = judgements.readingOf('oil#1', lab);
      expect(top[0]?.works[0]?.reading).toEqual(reading);
      expect(reading).not.toEqual(readingOn(judgements.pictureOf('oil#1')!, lab));
    }
  });

  test('law: two walls meet each wall in its corners, and it is one of the two that meet each of those', () => {
    for (const side of ['head', 'right', 'foot', 'left']) {
      const beside = wallsBeside(`dye:${side}`);
      expect(new Set(beside).size).toBe(2);
      for (const other of beside) expect(wallsBeside(other)).toContain(`dye:${side}`);
    }
    expect(wallsBeside('dye:floor')).toEqual([]);
  });
});
