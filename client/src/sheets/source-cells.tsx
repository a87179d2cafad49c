/** One row's cells as the source has them: where each stands, what is written there, and what it is taken as. */
import { CHECKLIST_FIELDS } from '@enfilade/records/checklist-headings';
import type { ChecklistRow } from '@enfilade/shared/checklist-reading';
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
              <td className="bi-source">{text}</td>
              <td>{CHECKLIST_FIELDS.find((words) => words.field === field)?.label ?? 'not taken'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
