/** Lines of a colour file beside the paints they were understood as, with where each goes. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import { beyondScreenText, howMeasured } from '@enfilade/shared/paint-records';
import { useState } from 'react';
import { labText } from './deck-words.ts';
import { placeOf, type ReviewRow, type Way } from './review-rows.ts';

/** Rows drawn at once. */
const AT_ONCE = 200;

export function ReviewTable(props: {
  readonly rows: readonly ReviewRow[];
  readonly file: string;
  readonly ways: ReadonlyMap<string, Way>;
  readonly choose: (where: string, way: Way) => void;
}) {
  const { rows, file, ways, choose } = props;
  const [most, setMost] = useState(AT_ONCE);
  // What needs a look comes first; the rest in the order of the file.
  const asks = ({ issues, twice }: ReviewRow): boolean => issues.length > 0 || twice !== null;
  const ordered = [...rows.filter(asks), ...rows.filter((row) => !asks(row))];
  return (
    <>
      <table className="deck-table deck-review">
        <thead>
          <tr>
            <th scope="col">In the file</th>
            <th scope="col">
              <span className="spoken">Patch</span>
            </th>
            <th scope="col">Understood as</th>
            <th scope="col">Goes in</th>
          </tr>
        </thead>
        <tbody>
          {ordered.slice(0, most).map((row) => (
            <Row key={row.where} row={row} file={file} way={ways.get(row.where) ?? row.way} choose={choose} />
          ))}
        </tbody>
      </table>
      {rows.length <= most ? null : (
        <button type="button" onClick={() => setMost(most + AT_ONCE)}>
          show {Math.min(AT_ONCE, rows.length - most)} more of {rows.length}
        </button>
      )}
    </>
  );
}

function Row(props: { row: ReviewRow; file: string; way: Way; choose: (where: string, way: Way) => void }) {
  const { row, file, way, choose } = props;
  const { where, source, paint, issues, known, twice } = row;
  const beyond = beyondScreenText(paint.lab);
  return (
    <tr>
      <td>
        <span className="t1">{where}</span>
        <span className="deck-review-source">{source}</span>
        {issues.map((issue) => (
          <span key={`${issue.where} ${issue.what}`} className="deck-review-issue">
            <b className="b">{placeOf(issue, file).field}:</b> {issue.what}
            {issue.value === '' ? '' : ` It says “${issue.value}”.`}
          </span>
        ))}
      </td>
      <td className="deck-row-patch">
        <i style={{ background: hexFromLabD65(paint.lab) }} />
      </td>
      <th scope="row">
        <span className="deck-row-name">{paint.name}</span>
        <span className="t1">
          {[paint.code, typeof paint.lrv === 'number' ? `LRV ${paint.lrv}` : '', paint.sheen]
            .filter(Boolean)
            .join(', ')}
        </span>
        <span className="t1">
          {labText(paint.lab)}; {howMeasured({ ...paint, order: '' })}
        </span>
        {beyond === null ? null : <span className="t1 deck-row-beyond">{beyond}</span>}
      </th>
      <td>
        <select
          aria-label={`${paint.name}, ${where}`}
          value={way}
          onChange={(event) => choose(where, event.target.value as Way)}
        >
          {known === null ? null : <option value="corrects">corrects {known.paint.name}</option>}
          <option value="new">as a new paint</option>
          <option value="out">left out</option>
        </select>
        {known === null ? null : (
          <span className="t1">
            {known.deltaE < 0.05 ? 'the same colour as there' : `ΔE00 ${known.deltaE.toFixed(1)} from what is there`}
          </span>
        )}
        {twice === null ? null : <span className="t1">the same paint as {twice}</span>}
      </td>
    </tr>
  );
}
