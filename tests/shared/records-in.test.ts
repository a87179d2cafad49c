import { ActHistory } from '@enfilade/shared/acts';
import { alikeAnswers, answeredRow, cellsOf, isUnderstood, typedAnswer } from '@enfilade/shared/checklist-answers';
import { checklistFrom, type RowAnswer, type RowWait } from '@enfilade/shared/checklist-reading';
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { pictureRecordsFrom, recordsInFrom } from '@enfilade/shared/records-in';
import { describe, expect, test } from 'vitest';

const CELLS = [
  ['Accession No', 'Title', 'Dimensions', 'Lender', 'Value', 'Count'],
  ['1931.14.3', 'The valley', '66 × 86 cm', '', 'EUR 4,000', '1'],
  ['1902.7', 'Blocks', '20 x 20 cm', '', '', '60'],
  ['1931.14.3', 'A lent valley', '10 x 20 cm', 'Parish of Saint Osk', '', '1'],
];

function shown(): { documents: ShowDocuments; history: ActHistory } {
  const documents = new ShowDocuments();
  return { documents, history: new ActHistory(documents, 'me') };
}

function bringIn(documents: ShowDocuments, history: ActHistory, cells: readonly (readonly string[])[]) {
  const incoming = recordsInFrom(documents, checklistFrom(cells).rows, new Map());
  history.perform(commands.addObjects(documents, incoming.records));
  return incoming;
}

describe('records coming in', () => {
  test('law: the same checklist twice adds nothing the second time and keeps every id', () => {
    const { documents, history } = shown();
    expect(bringIn(documents, history, CELLS)).toMatchObject({ added: 3, updated: 0 });
    const ids = [...documents.all('objects').keys()].sort();
    expect(bringIn(documents, history, CELLS)).toMatchObject({ added: 0, updated: 3 });
    expect([...documents.all('objects').keys()].sort()).toEqual(ids);
  });

  test('story: a number typed in another way is the same object; the same number of another lender is not', () => {
    const { documents, history } = shown();
    bringIn(documents, history, CELLS);
    const again = bringIn(documents, history, [
      CELLS[0] ?? [],
      ['1931-14-3', 'The valley from Tallow Hill', '66 × 86 cm', '', '', '1'],
    ]);
    expect(again).toMatchObject({ added: 0, updated: 1 });
    const titles = [...documents.all('objects').values()].map(({ title }) => title).sort();
    expect(titles).toEqual(['A lent valley', 'Blocks', 'The valley from Tallow Hill']);
  });

  test('story: what a person corrected and measured stays when the checklist comes again', () => {
    const { documents, history } = shown();
    bringIn(documents, history, CELLS);
    const [id] = [...documents.all('objects')].find(([, { title }]) => title === 'The valley') ?? [''];
    const measured = { heightMm: 700, widthMm: 900, depthMm: null, estimated: false };
    history.perform(commands.correctObject(id, { title: 'Corrected', measured }));
    bringIn(documents, history, CELLS);
    expect(documents.get('objects', id)).toMatchObject({ title: 'Corrected', measured });
  });

  test('story: values go to the private document alone, and one undo takes the whole import back', () => {
    const { documents, history } = shown();
    bringIn(documents, history, CELLS);
    expect(JSON.stringify([...documents.all('objects').values()])).not.toContain('4,000');
    expect([...documents.all('values').values()]).toEqual([{ value: 'EUR 4,000' }]);
    history.undo();
    expect(documents.all('objects').size + documents.all('values').size).toBe(0);
  });

  test('story: a number twice is two objects until a person says one, and comes again as two', () => {
    const { documents, history } = shown();
    const cells = [CELLS[0] ?? [], CELLS[1] ?? [], ['1931.14.3', 'Its double', '10 x 10 cm', '', '', '1']];
    const reading = checklistFrom(cells);
    const [wait] = reading.rows[1]?.waits ?? [];
    expect(wait?.issue.kind).toBe('number twice');
    const one = wait?.answers.find(({ label }) => label === 'one');
    expect(answeredRow(reading.rows[1] as never, [one as never])).toBeNull();
    expect(bringIn(documents, history, cells)).toMatchObject({ added: 2 });
    expect(bringIn(documents, history, cells)).toMatchObject({ added: 0, updated: 2 });
  });

  test('story: a size without unit waits; the unit a person names is what stands', () => {
    const [row] = checklistFrom([CELLS[0] ?? [], ['1', 'x', '30 x 40', '', '', '']]).rows;
    const wait = row?.waits.find(({ issue }) => issue.kind === 'unit unknown');
    expect(
      wait?.answers.map(({ label, fields }) => [label, fields?.measured?.heightMm, fields?.measured?.widthMm]),
    ).toEqual([
      ['cm', 300, 400],
      ['in', 762, 1016],
      ['mm', 30, 40],
    ]);
    expect(row?.object.dimensionsText).toBe('30 x 40');
  });

  test('story: where two systems disagree either may be taken, and neither is taken unasked', () => {
    const [row] = checklistFrom([CELLS[0] ?? [], ['1', 'x', '24 × 36 in. (61 × 81.4 cm)', '', '', '']]).rows;
    const wait = row?.waits.find(({ issue }) => issue.kind === 'systems disagree');
    expect(wait?.answers.map(({ fields }) => Math.round(fields?.measured?.widthMm ?? 0))).toEqual([914, 814]);
    expect(row?.object.measured ?? null).toBeNull();
  });

  test('law: a show never comes to hold more than 5,000 records; the rows beyond are told', () => {
    const { documents, history } = shown();
    const row = (n: number) => [`N.${n}`, `Thing ${n}`, '10 × 10 cm', '', '', ''];
    bringIn(documents, history, [CELLS[0] ?? [], ...Array.from({ length: 4999 }, (_, n) => row(n))]);
    const more = bringIn(documents, history, [CELLS[0] ?? [], row(0), row(7000), row(7001)]);
    expect(more).toMatchObject({ updated: 1, added: 1, beyond: [4] });
    expect(documents.all('objects').size).toBe(5000);
  });

  test('story: pictures alone reach a record that is there, each at its own piece, and change nothing else of it', () => {
    const { documents, history } = shown();
    bringIn(documents, history, CELLS);
    const [id = '', before] = [...documents.all('objects')].find(([, { number }]) => number === '1902.7') ?? [];
    const pictures = {
      whole: null,
      byPiece: new Map([
        [1, 'aa'],
        [3, 'cc'],
      ]),
    };
    history.perform(commands.addObjects(documents, pictureRecordsFrom(documents, new Map([[id, pictures]]))));
    expect(documents.get('objects', id)).toEqual({ ...before, picture: 'aa' });
    expect([1, 2, 3].map((n) => documents.get('pieces', `${id}#${n}`)?.picture ?? null)).toEqual(['aa', null, 'cc']);
    const later = { whole: null, byPiece: new Map([[2, 'bb']]) };
    history.perform(commands.addObjects(documents, pictureRecordsFrom(documents, new Map([[id, later]]))));
    expect(documents.get('objects', id)?.picture).toBe('aa');
    const whole = { whole: 'ww', byPiece: new Map() };
    history.perform(commands.addObjects(documents, pictureRecordsFrom(documents, new Map([[id, whole]]))));
    expect(documents.get('objects', id)?.picture).toBe('ww');
    expect([1, 2, 3, 4].map((n) => documents.get('pieces', `${id}#${n}`)?.picture ?? null)).toEqual([
      'aa',
      'bb',
      'cc',
      null,
    ]);
  });

  test('story: a question answered, typed or left so makes its row understood; a size without unit is not taken', () => {
    const { rows } = checklistFrom([
      CELLS[0] ?? [],
      ['7', 'x', '30 x 40', '', '', 'dozen'],
      ['8', 'y', '', '', '', ''],
    ]);
    const [row, other] = rows;
    if (row === undefined || other === undefined) throw new Error('two rows were read');
    const [size, count] = cellsOf(row).map((waits) => waits[0] as RowWait);
    if (size === undefined || count === undefined) throw new Error('its size and its count wait');
    expect(typedAnswer(size.issue, '30 x 40')).toBeNull();
    const typed = typedAnswer(size.issue, '30 x 40 cm');
    expect(typed?.fields?.measured).toMatchObject({ heightMm: 300, widthMm: 400, estimated: false });
    const answers = new Map([[size.key, typed as RowAnswer]]);
    expect(isUnderstood(row, answers)).toBe(false);
    answers.set(count.key, typedAnswer(count.issue, '12') as RowAnswer);
    expect(isUnderstood(row, answers)).toBe(true);
    expect(answeredRow(row, [...answers.values()])?.object).toMatchObject({ count: 12, measured: { heightMm: 300 } });
    expect(isUnderstood(other, new Map())).toBe(false);
    const [missing] = other.waits;
    expect(missing?.answers.map(({ label }) => label)).toEqual(['leave it so']);
  });

  test('story: one answer goes to every row that waits with the same question, and to no other', () => {
    const row = (number: string, size: string) => [number, 'x', size, '', '', '1'];
    const sizes = ['30 x 40', '20 x 20', '24 × 36 in. (61 × 81.4 cm)', '10 x 10', '50 x 60 cm', '5 x 5'];
    const { rows } = checklistFrom([CELLS[0] ?? [], ...sizes.map((size, n) => row(`N.${n}`, size))]);
    const waitOf = (line: number) => rows.find((one) => one.line === line)?.waits[0] as RowWait;
    const inches = waitOf(3).answers.find(({ label }) => label === 'in') as RowAnswer;
    const centimetres = waitOf(2).answers.find(({ label }) => label === 'cm') as RowAnswer;
    const answers = new Map([
      [waitOf(3).key, inches],
      [waitOf(2).key, centimetres],
    ]);
    const alike = alikeAnswers(rows, answers);
    expect(alike.map(([key, { label, fields }]) => [key, label, fields?.measured?.heightMm])).toEqual([
      [waitOf(5).key, 'cm', 100],
      [waitOf(7).key, 'cm', 50],
    ]);
    expect(alikeAnswers(rows, new Map([...answers, ...alike]))).toEqual([]);
    expect(alikeAnswers(rows, new Map())).toEqual([]);
  });
});
