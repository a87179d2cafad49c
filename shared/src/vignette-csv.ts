/** The vignette list as a file that a spreadsheet opens. */
import { csvFrom } from '@enfilade/records/checklist-csv';
import { likeMembersOf } from './like-members.ts';
import { sourceTexts, type VignetteListRow, whereText } from './vignette-list.ts';

/** Words for a row that need a person's unit or language: the state told whole. */
export type StateText = (row: VignetteListRow) => string;

const HEADINGS = [
  'No.',
  'Vignette',
  'Room and wall',
  'Wall colour',
  'Focal work',
  'Members',
  'Pieces',
  'Where from',
  'Intent',
  'State',
];

/** The list as CSV (RFC 4180, with a byte order mark so that a spreadsheet reads accents), safe to open in one. */
export function toVignetteCsv(
  rows: readonly VignetteListRow[],
  stateText: StateText = (row) => row.standing.state,
): string {
  const lines = rows.map((row) => [
    String(row.number),
    row.name,
    whereText(row.where),
    row.where.map(({ paint, on }) => (row.where.length > 1 ? `${on}: ` : '') + (paint?.name ?? 'none')).join('; '),
    row.focal === null ? '' : `${row.focal.name} (${row.focal.objectNumber})`,
    likeMembersOf(row.members, row.focal?.pieceId ?? null)
      .map(({ text, numbers }) => (numbers === '' ? text : `${text} (${numbers})`))
      .join('; '),
    String(row.members.reduce((sum, { pieces }) => sum + pieces, 0)),
    sourceTexts(row.members).join('; '),
    row.intent,
    stateText(row),
  ]);
  return `\uFEFF${csvFrom([HEADINGS, ...lines])}`;
}
