/** The checklist's headings and the record field each means; mended by a choice, and the rows are read again at once. */
import { CHECKLIST_FIELDS, type ChecklistField, isPrivate, mayMean } from '@enfilade/records/checklist-headings';
import type { ChecklistReading } from '@enfilade/shared/checklist-reading';

interface HeadingsPartProps {
  readonly reading: ChecklistReading;
  readonly mend: (mapping: readonly (ChecklistField | null)[]) => void;
}

export function HeadingsPart({ reading, mend }: HeadingsPartProps) {
  const choose = (column: number, field: ChecklistField | null): void =>
    // No field twice: the heading that had it gives it up.
    mend(reading.mapping.map((now, index) => (index === column ? field : now === field ? null : now)));
  return (
    <section className="bi-headings">
      <h2>Headings</h2>
      <table>
        <thead className="spoken">
          <tr>
            <th scope="col">heading</th>
            <th scope="col">taken as</th>
            <th scope="col">cells filled</th>
          </tr>
        </thead>
        <tbody>
          {reading.headings.map((heading, column) => {
            const field = reading.mapping[column] ?? null;
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: two headings may be alike; their place tells them apart
              <tr key={column}>
                <td>{heading || '(no heading)'}</td>
                <td>
                  <select
                    aria-label={`${heading || `heading ${column + 1}`} is taken as`}
                    className={field === null ? 'bi-field it' : 'bi-field'}
                    value={field ?? ''}
                    onChange={(event) => choose(column, (event.target.value || null) as ChecklistField | null)}
                  >
                    <option value="">not taken</option>
                    {CHECKLIST_FIELDS.filter((words) => mayMean(heading, words.field)).map((words) => (
                      <option key={words.field} value={words.field}>
                        {words.label}
                        {isPrivate(words.field) ? ', private' : ''}
                      </option>
                    ))}
                  </select>
                </td>
                <td className="r">{field === null ? '' : reading.filled[column]}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p className="t1">
        Choose another word to mend one; the rows are read again at once. What is private stays with the lead, the
        curator and the registrar.
      </p>
    </section>
  );
}
