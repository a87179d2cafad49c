import { type HandChoice, pictureChoices, picturesByTarget, targetsOf } from '@enfilade/client/sheets/picture-choices';
import { timeLeftText } from '@enfilade/client/sheets/sending';
import { checklistFrom } from '@enfilade/shared/checklist-reading';
import { describe, expect, test } from 'vitest';
import { work } from '../../shared/sample-show.ts';

const { rows } = checklistFrom([
  ['Number', 'Title', 'Dimensions', 'Image File'],
  ['1931.14.3', 'The valley', '66 × 86 cm', ''],
  ['1902.7.1–60', 'Blocks', '20 x 20 cm', ''],
  ['1888.3', 'Map', '50 x 60 cm', 'map 1823 front.jpg'],
]);
const targets = targetsOf(
  rows,
  new Map([
    ['old', work('L.9')],
    ['known', work('1888.3')],
  ]),
);

const pictures = (...names: readonly string[]) => names.map((fileName) => ({ id: fileName, fileName }));
const shown = (names: readonly string[], byHand: ReadonlyMap<string, HandChoice> = new Map()) =>
  pictureChoices(pictures(...names), targets, rows, byHand).map(({ target, of }) => [target?.key ?? null, of]);

describe('pictures finding their objects', () => {
  test('story: by number, by the checklist’s picture column, and by hand; the rest wait', () => {
    const files = ['1931-14-3.jpg', 'map 1823 front.JPG', 'DSC_0412.jpg', 'L.9.png', 'scan.png'];
    const found = shown(files, new Map([['DSC_0412.jpg', { target: 'row 3' }]]));
    expect(found.map(([key]) => key)).toEqual(['row 2', 'row 4', 'row 3', 'old', null]);
  });

  test('story: a record that counts several takes each picture at its own piece, and none moves up', () => {
    const files = ['1902.7_10.jpg', '1902.7_3.jpg', '1902.7_1.jpg', 'all blocks.jpg', 'more.jpg'];
    const byHand = new Map([
      ['more.jpg', { target: 'row 3', of: 3 }],
      ['all blocks.jpg', { target: 'row 3' }],
    ]);
    const choices = pictureChoices(pictures(...files), targets, rows, byHand);
    expect(choices.map(({ of }) => of)).toEqual([10, null, 1, 'whole', 3]);
    const byTarget = picturesByTarget(choices, (name) => (name === 'more.jpg' ? undefined : `sha of ${name}`));
    expect(byTarget.get('row 3')).toEqual({
      whole: 'sha of all blocks.jpg',
      byPiece: new Map([
        [10, 'sha of 1902.7_10.jpg'],
        [1, 'sha of 1902.7_1.jpg'],
      ]),
    });
  });

  test('story: the pieces of a number that begins later are counted from its own first', () => {
    const late = checklistFrom([
      ['Number', 'Title'],
      ['1902.7.11–20', 'Blocks'],
    ]).rows;
    const [choice] = pictureChoices(pictures('1902.7_13.jpg'), targetsOf(late, new Map()), late, new Map());
    expect(choice).toMatchObject({ of: 3, target: { count: 10 } });
  });

  test('law: one picture a piece; the latest word stands, and who is put out waits for another', () => {
    const files = ['1902.7_1.jpg', '1902.7_2.jpg', '1931.14.3.jpg', '1931.14.3_b.jpg'];
    expect(shown(files)).toEqual([
      ['row 3', 1],
      ['row 3', 2],
      ['row 2', 'whole'],
      ['row 2', null],
    ]);
    const words = new Map<string, HandChoice>([
      ['1902.7_1.jpg', { of: 5 }],
      ['1902.7_2.jpg', { of: 5 }],
      ['1931.14.3_b.jpg', { of: 'whole' }],
    ]);
    expect(shown(files, words)).toEqual([
      ['row 3', null],
      ['row 3', 5],
      ['row 2', null],
      ['row 2', 'whole'],
    ]);
  });

  test('story: a match that is wrong is undone by a word, and given to another object', () => {
    expect(shown(['L.9.png'], new Map([['L.9.png', { target: null }]]))).toEqual([[null, null]]);
    expect(shown(['L.9.png'], new Map([['L.9.png', { target: 'row 4' }]]))).toEqual([['row 4', 'whole']]);
  });

  test('law: a record in the checklist is offered once, whether it is on the checklist already or not', () => {
    expect(targets.map(({ key }) => key)).toEqual(['row 2', 'row 3', 'row 4', 'old']);
  });

  test('story: the time left is told in words', () => {
    expect([null, 4, 41, 200].map(timeLeftText)).toEqual([
      'just begun',
      'a few seconds more',
      'about 40 seconds more',
      'about 3 minutes more',
    ]);
  });
});
