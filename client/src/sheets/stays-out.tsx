/** Rows that do not go into the collection, each with where it stands, what is written there and why. */
import type { StaysOut as Row } from '@enfilade/shared/collection-reading';
import { useState } from 'react';

const SHOWN = 12;

interface StaysOutProps {
  readonly rows: readonly Row[];
  /** More than `rows` where they are too many to be listed. */
  readonly inAll: number;
}

export function StaysOut({ rows, inAll }: StaysOutProps) {
  const [shown, setShown] = useState(SHOWN);
  if (inAll === 0) return null;
  return (
    <section className="bi-look bi-out">
      <h2>
        {inAll === 1 ? 'One row stays out' : `${inAll.toLocaleString('en-GB')} rows stay out`}; the rest{' '}
        {inAll === 1 ? 'is' : 'are'} not held up
      </h2>
      <table className="bi-table">
        <thead>
          <tr>
            <th scope="col">where</th>
            <th scope="col">in the source</th>
            <th scope="col">why</th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, shown).map(({ place, value, what }) => (
            <tr key={`${place} ${what}`}>
              <td>{place}</td>
              <td className="bi-written">{value || '(blank)'}</td>
              <td className="cap">{what}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length > shown ? (
        <p className="bi-more">
          <button type="button" onClick={() => setShown(shown + 200)}>
            {Math.min(200, rows.length - shown)} more of {(rows.length - shown).toLocaleString('en-GB')}
          </button>
        </p>
      ) : inAll > rows.length && rows.length > 0 ? (
        <p className="t1">and {(inAll - rows.length).toLocaleString('en-GB')} more that are not listed.</p>
      ) : null}
    </section>
  );
}
