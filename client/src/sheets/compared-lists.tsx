/** Two vignette lists compared row by row in sentences: two frozen ones, or a frozen one and the list as it stands. */
import type { RowDifference } from '@enfilade/shared/list-versions';
import { shortDigest } from '@enfilade/shared/print-stamps';
import type { Version } from '@enfilade/shared/protocol';
import { capital } from '@enfilade/shared/surface-names';
import { lengthText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { isList, useFrozenLists } from './frozen-lists.ts';
import { type ListNow, useDifferences } from './use-list.ts';
import { momentText } from './vignette-words.ts';

interface ComparedProps {
  readonly before: Version;
  /** Null: the list as it stands. */
  readonly after: Version | null;
  readonly now: ListNow;
}

export function ComparedLists({ before, after, now }: ComparedProps) {
  const { judgements } = useShow();
  const { unit } = usePreferences();
  const [first, second] = useFrozenLists(before.digest, after?.digest);
  const differences = useDifferences();
  const later = after === null ? now.list : second;
  if (!isList(first) || !isList(later)) {
    const wanted = first === 'fetching' || later === 'fetching';
    return (
      <p className="cap vl-empty" role="status">
        {wanted ? 'Fetching what was frozen…' : 'A frozen list could not be fetched. Try again in a while.'}
      </p>
    );
  }
  const rows = differences(first, later);
  const differing = rows.filter(({ kind }) => kind !== 'same');
  const same = rows.filter(({ kind }) => kind === 'same');
  const numbers = new Map([...first.rows, ...later.rows].map(({ id, number }) => [id, number]));
  return (
    <article className="vl-paper" aria-label="What differs">
      <header className="vl-head">
        <h1>What differs</h1>
        <p className="vl-show">
          <span className="serif t4">{later.title}</span>
          <br />
          Vignette list, {rows.length} {rows.length === 1 ? 'row' : 'rows'}, {differing.length} of them{' '}
          {differing.length === 1 ? 'differs' : 'differ'}
        </p>
        <p className="vl-stamp">
          <b className="b">
            Version {before.number} → {after === null ? 'as it stands' : `version ${after.number}`}
          </b>
          <br />
          {before.number}: {momentText(new Date(before.at))}, stamp {shortDigest(before.digest)}
          <br />
          {after === null
            ? `now: ${momentText(new Date())}`
            : `${after.number}: ${momentText(new Date(after.at))}, stamp ${shortDigest(after.digest)}`}
        </p>
      </header>
      {differing.length === 0 ? (
        <p className="cap vl-empty">No row differs.</p>
      ) : (
        <table className="vl-table vl-differences">
          <thead>
            <tr>
              <th scope="col">no.</th>
              <th scope="col">vignette</th>
              <th scope="col">what differs</th>
            </tr>
          </thead>
          <tbody>
            {differing.map((row) => (
              <tr key={row.id}>
                <td className="vl-number">{numbers.get(row.id)}</td>
                <td>
                  <span className="vl-name">{row.name}</span>
                </td>
                <td>
                  <Sentences row={row} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <footer className="vl-foot">
        {same.length === 0 || differing.length === 0 ? null : `The same: ${same.map(({ name }) => name).join(', ')}. `}
        Moves up to {lengthText(judgements.setting('toleranceMm'), unit)} {unit} are not told. Printed{' '}
        {momentText(new Date())}.
      </footer>
    </article>
  );
}

function Sentences({ row: { kind, sentences } }: { readonly row: RowDifference }) {
  const told = kind === 'new' ? ['On the later list only'] : kind === 'gone' ? ['On the earlier list only'] : sentences;
  return (
    <ul className="vl-members">
      {told.map((sentence) => (
        <li key={sentence}>{capital(sentence)}</li>
      ))}
    </ul>
  );
}
