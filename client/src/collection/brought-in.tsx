/** What was brought into the collection from files, by whom and when, and the way back; and the way in. */
import type { CollectionImport } from '@enfilade/shared/collection-in';
import { mayBringIn } from '@enfilade/shared/seats';
import { useState } from 'react';
import { takeImportBack } from '../sheets/use-collecting.ts';
import { momentText } from '../sheets/vignette-words.ts';
import { useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { useAsked } from './asking.ts';
import { backText } from './back-text.ts';
import { Trouble } from './trouble.tsx';

export function BroughtIn() {
  const { base, me } = useShow();
  const may = mayBringIn(me.person.role);
  const told = useAsked<readonly CollectionImport[]>(may ? '/imports' : null);
  const [said, setSaid] = useState<string | null>(null);
  const [busy, setBusy] = useState<string | null>(null);
  if (!may) return <p className="cap co-empty">{WHO}</p>;
  const takeBack = async ({ id, file }: CollectionImport): Promise<void> => {
    setBusy(id);
    setSaid(`Taking ${file} back.`);
    const back = await takeImportBack(base, id, (_, left) =>
      setSaid(`Taking ${file} back: ${left.toLocaleString('en-GB')} left.`),
    );
    setBusy(null);
    setSaid('what' in back ? back.what : backText(file, back));
    told.again();
  };
  const list = told.answer ?? [];
  return (
    <div className="co-list co-brought">
      <p>
        <IntoCollection />
      </p>
      <Trouble told={told} />
      {said === null ? null : (
        <p className="cap" role="status">
          {said}
        </p>
      )}
      {told.answer !== null && list.length === 0 ? (
        <p className="cap">Nothing has been brought in from a file yet.</p>
      ) : null}
      {list.length === 0 ? null : (
        <ul>
          {list.map((one) => (
            <li key={one.id} className="co-import">
              <div>
                <h2>{one.file}</h2>
                <p className="t1">
                  {one.by}, {momentText(new Date(one.at))}
                  <br />
                  {countsText(one)}
                </p>
              </div>
              {one.added + one.updated === 0 ? (
                <p className="t1">it changed nothing</p>
              ) : one.mayGoBack ? (
                <button
                  type="button"
                  className="act"
                  disabled={busy !== null}
                  aria-label={`Take it back: ${one.file}, ${momentText(new Date(one.at))}`}
                  onClick={() => void takeBack(one)}
                >
                  Take it back
                </button>
              ) : (
                <p className="t1">taken back</p>
              )}
            </li>
          ))}
        </ul>
      )}
      <p className="t1">
        The last twelve can be taken back, the latest first: records are then as they were, save what something else has
        changed since.
      </p>
    </div>
  );
}

function countsText({ added, updated, same, rows }: CollectionImport): string {
  const [now, anew, old, all] = [added, updated, same, rows].map((n) => n.toLocaleString('en-GB'));
  return `${now} new, ${anew} brought up to date, ${old} as they were; of ${all} ${rows === 1 ? 'row' : 'rows'}`;
}

const WHO = 'The lead, the curator and the registrar bring records into the collection.';

/** The way in, for whoever may; for the rest, who does. */
export function IntoCollection() {
  const { me } = useShow();
  if (!mayBringIn(me.person.role)) return <>{WHO}</>;
  return (
    <a className="act" href={toAddress({ sheet: 'bring-in', into: 'collection' })}>
      Bring in a file of records, or photographs
    </a>
  );
}
