import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import { likenessRecordsOf } from '@enfilade/shared/likeness-records';
import type { ImageFacts } from '@enfilade/shared/protocol';
import type { MuseumObject } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { sampleShow, work } from './sample-show.ts';

const silhouette = { aspect: 2, fill: 0.9, outline: [0.2, 0.1, 0, 0, 0, 0, 0, 0] };
const cutOut = { how: 'left out', confidence: 0.9, doubts: [] } as const;

function rowOf(object: Partial<MuseumObject>, facts: Partial<ImageFacts> | null = null) {
  const { documents, history } = sampleShow();
  const picture = facts === null ? {} : { picture: 'p' };
  history.perform(commands.addObjects(documents, [{ id: 'it', object: work('X.1', { ...object, ...picture }) }]));
  const known = { sha256: 'p', widthPx: 200, heightPx: 100, body: [], edge: [], opaqueShare: 1, engine: '' };
  const pictures = {
    get: (key: string) => (key === 'p' ? { ...known, cell: { page: 0, index: 0 }, ...facts } : undefined),
  };
  const judgements = new Judgements(documents, pictures);
  return { documents, history, judgements, row: likenessRecordsOf(judgements, ['it'])[0] };
}

describe('what likeness is sought in', () => {
  test('story: a mould of the demo, its texts read, its palette and outline taken from its picture', () => {
    const { row } = rowOf(
      {
        title: 'Copper mould, fluted',
        type: 'mould',
        medium: 'Beaten copper, tinned inside',
        maker: 'J. Merrowell',
        dateText: 'c. 1840',
        dimensionsText: '23.5 × 19 × 19 cm',
        lender: 'Parish of Saint Osk',
        source: 'loan',
      },
      { body: [{ lab: { L: 60, a: 20, b: 30 }, share: 1 }], silhouette, cutOut },
    );
    expect(row).toMatchObject({
      id: 'it',
      type: 'mould',
      materials: ['copper'],
      maker: 'J. Merrowell',
      from: 'Parish of Saint Osk',
      tags: ['beaten', 'tinned'],
      heightMm: 235,
      widthMm: 190,
      depthMm: 190,
      palette: [{ L: 60, a: 20, b: 30, share: 1 }],
      silhouette,
    });
    expect(row!.earliestYear).toBeLessThan(1840);
    expect(row!.latestYear).toBeGreaterThan(1840);
  });

  test('law: what is not known is not there, and is neither 0 nor an empty word', () => {
    expect(rowOf({}).row).toEqual({ id: 'it', from: 'the museum’s own' });
    expect(rowOf({ maker: 'Unknown', dateText: 'n.d.', medium: '', type: ' ' }).row).toEqual({
      id: 'it',
      from: 'the museum’s own',
    });
    expect(rowOf({ maker: 'circle of J. Merrowell' }).row).not.toHaveProperty('maker');
    expect(rowOf({ dimensionsText: '30 × 20 cm' }).row).not.toHaveProperty('depthMm');
    const after = rowOf({ dateText: 'after 1901' }).row;
    expect(after).not.toHaveProperty('latestYear');
  });

  test('law: an uncut photograph has the outline of the thing only where it has its proportions, or a person says so', () => {
    const whole = { how: 'whole', confidence: 1, doubts: [] } as const;
    const of = (dimensionsText: string, cut: ImageFacts['cutOut']) =>
      rowOf({ dimensionsText }, { silhouette, ...(cut ? { cutOut: cut } : {}) }).row?.silhouette;
    expect(of('50 × 100 cm', whole)).toEqual(silhouette);
    expect(of('100 × 50 cm', whole)).toBeUndefined();
    expect(of('100 × 50 cm', { ...whole, choice: 'whole' })).toEqual(silhouette);
    expect(of('', whole)).toBeUndefined();
    expect(of('50 × 100 cm', undefined)).toBeUndefined();
  });

  test('law: a record of many pieces is one row, of the middle of their sizes', () => {
    const { documents, history, judgements } = rowOf({ count: 3 });
    for (const [n, heightMm] of [200, 900, 300].entries())
      history.perform(
        commands.correctPiece(`it#${n + 1}`, { measured: { heightMm, widthMm: 100, depthMm: null, estimated: false } }),
      );
    const rows = likenessRecordsOf(judgements, documents.all('objects').keys());
    expect(rows).toHaveLength(documents.all('objects').size);
    expect(rows.find(({ id }) => id === 'it')).toMatchObject({ heightMm: 300, widthMm: 100 });
  });

  test('law: a word of a title is a trait where three titles of the pool have it, and says nothing its type says', () => {
    const { documents, history, judgements } = rowOf({});
    const titled = (id: string, title: string) => ({ id, object: work(id, { title, type: 'mould' }) });
    history.perform(
      commands.addObjects(documents, [
        titled('a', 'Mould, fluted'),
        titled('b', 'Fluted moulds'),
        titled('c', 'fluted'),
        titled('d', 'Domed, from the weir'),
      ]),
    );
    const tags = new Map(likenessRecordsOf(judgements, ['a', 'b', 'c', 'd', 'gone']).map(({ id, tags }) => [id, tags]));
    expect([...tags]).toEqual([
      ['a', ['fluted']],
      ['b', ['fluted']],
      ['c', ['fluted']],
      ['d', undefined],
    ]);
    const two = likenessRecordsOf(judgements, ['a', 'b']);
    expect(two.map((row) => row.tags)).toEqual([undefined, undefined]);
  });
});
