/** The list of samples to order and post, as rows for paper and for CSV. Pure. */
import { toCell } from '@enfilade/colour/delimited';
import type { ShowDocuments } from '@enfilade/shared/documents';
import { paintRecordLrvOf } from '@enfilade/shared/paint-records';
import { type SampleToPost, samplesToPost } from '@enfilade/shared/samples';
import type { Paint, SampleKind } from '@enfilade/shared/schema';
import { onText } from './deck-words.ts';

export interface SampleRow extends SampleToPost {
  readonly paint: Paint;
  readonly lrv: number;
  /** Walls it is for, in words. */
  readonly on: string;
}

/** What to make: from practice, a board is better 60 by 60 cm, brushed or rolled in two coats (common practice, no source). */
export const KIND_WORDS: Record<SampleKind, string> = {
  drawdown: 'drawdown, on card',
  'sample board': 'sample board, 60 × 60 cm, two coats',
};

export function sampleRows(documents: ShowDocuments): SampleRow[] {
  return samplesToPost(documents).flatMap((line): SampleRow[] => {
    const paint = documents.get('deck', line.paintId);
    if (paint === undefined) return [];
    return [{ ...line, paint, lrv: Math.round(paintRecordLrvOf(paint).lrv), on: onText(documents, line.surfaces) }];
  });
}

const HEADINGS = ['paint', 'code', 'LRV', 'sheen', 'sample', 'to', 'for'];

/** RFC 4180, with a heading row. */
export function toSamplesCsv(rows: readonly SampleRow[]): string {
  const cells = rows.map(({ paint, lrv, kind, to, on }) => [
    paint.name,
    paint.code ?? '',
    String(lrv),
    paint.sheen ?? '',
    KIND_WORDS[kind],
    to,
    on,
  ]);
  return [HEADINGS, ...cells].map((row) => `${row.map(toCell).join(',')}\r\n`).join('');
}
