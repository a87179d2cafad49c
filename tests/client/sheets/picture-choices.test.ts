import { pictureChoices, picturesByTarget, targetsOf } from '@enfilade/client/sheets/picture-choices';
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

describe('pictures finding their objects', () => {
  test('story: by number, by the checklist’s picture column, and by hand; the rest wait', () => {
    const files = ['1931-14-3.jpg', 'map 1823 front.JPG', 'DSC_0412.jpg', 'L.9.png', 'scan.png'];
    const choices = pictureChoices(files, targets, rows, new Map([['DSC_0412.jpg', 'row 3']]));
    expect(choices.map(({ target }) => target?.key ?? null)).toEqual(['row 2', 'row 4', 'row 3', 'old', null]);
  });

  test('story: a record that counts several takes its pictures in the order of its pieces', () => {
    const files = ['1902.7_10.jpg', '1902.7_2.jpg', '1902.7_1.jpg'];
    const choices = pictureChoices(files, targets, rows, new Map());
    const byTarget = picturesByTarget(choices, (name) => (name === '1902.7_2.jpg' ? undefined : `sha of ${name}`));
    expect(byTarget.get('row 3')).toEqual(['sha of 1902.7_1.jpg', 'sha of 1902.7_10.jpg']);
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
