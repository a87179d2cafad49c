/**
 * Who may do what, written down once by hand and not derived from any code: the hostile client tries every cell against
 * a running server, and server/THREAT-MODEL.md shows this very table.
 */
import type { Role } from '@enfilade/shared/seats';

export const COLUMNS: readonly Role[] = [
  'lead',
  'curator',
  'registrar',
  'preparator',
  'conservator',
  'guest artist',
  'viewer',
];

/** One word a column, in order: `reads+writes`, `reads`, `nothing` of a document; `may`, `refused` of an act. */
export const POWERS_TABLE: Readonly<Record<string, readonly string[]>> = {
  rooms: rw('W W r W r r r'),
  checklist: rw('W W W r r r r'),
  hang: rw('W W r W r W r'),
  'hang, artist proposes only': rw('W W r W r r r'),
  talk: rw('W W W W W W r'),
  private: rw('W W W - - - -'),
  record: rw('r r r r r r r'),
  'sign off': may('y y y y y y n'),
  'bring pictures in': may('y y y n n n n'),
  'have a manifest and its pictures fetched': may('y y y n n n n'),
  'take the whole show out': may('y y y n n n n'),
  'take a whole show in': may('y n n n n n n'),
  'take the checklist out as a manifest': may('y y y y y y y'),
  'see the pictures': may('y y y y y y y'),
  'print a wall': may('y y y y y y y'),
  'read the history': may('y y y y y y y'),
  'read the collection': may('y y y y y y y'),
  'see storage places of the collection': may('y y y y n n n'),
  'take records into the collection, and back': may('y y y n n n n'),
  'see values of the collection': may('y y y n n n n'),
  'keep a state of the hang': may('y y y y y y n'),
  'freeze the vignette list': may('y y n y n y n'),
  'freeze the vignette list, artist proposes only': may('y y n y n n n'),
  'accept a caution on load or hanging': may('n n n y n n n'),
  'accept a caution on light or materials': may('n n n n y n n'),
  'accept a caution on light on a conservator’s word': may('n n y n y n n'),
  'accept a caution on a way': may('y n n n n n n'),
  'accept a caution on a loan': may('n n y n n n n'),
  'take back another’s word on load or hanging': may('n n n y n n n'),
  'take back another’s word on light or materials': may('n n y n y n n'),
  'take back another’s word on a way': may('y n n n n n n'),
  'take back one’s own word on a caution': may('y y y y y y y'),
  'print a loan list': may('y y y y y y y'),
  'see the seats': may('y y n n n n n'),
  'invite a viewer': may('y y n n n n n'),
  'invite a curator': may('y y n n n n n'),
  'invite a lead': may('y n n n n n n'),
  'change a viewer’s role to registrar': may('y y n n n n n'),
  'change a viewer’s role to lead': may('y n n n n n n'),
  'change a lead’s role': may('y n n n n n n'),
  'take a viewer’s seat back': may('y y n n n n n'),
  'take a lead’s seat back': may('y n n n n n n'),
  'give a viewer a new link': may('y y n n n n n'),
  'give a lead a new link': may('y n n n n n n'),
  'change the own role, take the own seat back': may('n n n n n n n'),
};

function rw(row: string): readonly string[] {
  return row.split(' ').map((mark) => ({ W: 'reads+writes', r: 'reads' })[mark] ?? 'nothing');
}

function may(row: string): readonly string[] {
  return row.split(' ').map((mark) => (mark === 'y' ? 'may' : 'refused'));
}

/** The table as Markdown, as it stands in the threat model. */
export function toMarkdown(): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    line(['', ...COLUMNS]),
    line(['---', ...COLUMNS.map(() => '---')]),
    ...Object.entries(POWERS_TABLE).map(([what, row]) =>
      line([what, ...row.map((word) => word.replace('reads+writes', 'reads, writes').replace(/nothing|refused/, '–'))]),
    ),
  ].join('\n');
}
