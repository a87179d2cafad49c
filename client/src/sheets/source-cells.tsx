/** One row's cells as the source has them: where each stands, what is written there, and what it is taken as. */
import { CHECKLIST_FIELDS, type ChecklistField } from '@enfilade/records/checklist-headings';
import type { ChecklistRow } from '@enfilade/shared/checklist-reading';
import { dateLine, dateWordsOf, makerLine, makerWordsOf } from '@enfilade/shared/making-words';
import type { SourceAnswer } from '../workers/checklist-task.ts';

interface SourceCellsProps {
  readonly row: ChecklistRow | undefined;
  readonly source: SourceAnswer | null;
  readonly close: () => void;
}

export function SourceCells({ row, source, close }: SourceCellsProps) {
  if (row === undefined || source === null) return null;
  return (
    <section className="bi-cells" aria-label={`${row.object.number} in the source`}>
      <p className="bi-cells-head">
        <b className="b">{row.object.number}</b>
        <span className="t1">{row.place}</span>
        <button type="button" onClick={close}>
          put away
        </button>
      </p>
      <table className="bi-table">
        <thead>
          <tr>
            <th scope="col">where it stands</th>
            <th scope="col">heading</th>
            <th scope="col">as written there</th>
            <th scope="col">taken as</th>
          </tr>
        </thead>
        <tbody>
          {source.cells.map(({ place, heading, text, field }) => (
            <tr key={place}>
              <td>{place}</td>
              <td>{heading}</td>
              <td className="bi-written">{text}</td>
              <td>
                {CHECKLIST_FIELDS.find((words) => words.field === field)?.label ?? 'not taken'}
                <ReadAs field={field} text={text} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** What is understood of a date or a maker, below what it is taken as. */
function ReadAs({ field, text }: { readonly field: ChecklistField | null; readonly text: string }) {
  const date = field === 'date' ? dateWordsOf(text) : null;
  const line = date !== null ? dateLine(date) : field === 'maker' ? makerLine(makerWordsOf(text)) : '';
  if (line === '' || line === text) return null;
  return (
    <span className="t1 bi-read">
      read as {line}
      {date?.doubts.map((doubt) => ` ${doubt}`)}
    </span>
  );
}
