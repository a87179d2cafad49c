/** What is wanted and has no picture: things of the collection that somebody says yes or maybe to, and of the checklist. */
import type { MuseumObject } from '@enfilade/shared/schema';
import { useRoots, useShow } from '../sync/hooks.ts';
import { useRecords } from './asking.ts';
import { PhotographIt } from './photograph-it.tsx';
import { SaidRow, standingOf } from './said-list.tsx';
import { useStanding } from './saying.tsx';
import { Trouble } from './trouble.tsx';

export function ToPhotograph() {
  const { documents } = useShow();
  const standing = useStanding();
  useRoots('objects', 'pieces');
  const wanted = [...standing.words].flatMap(([key, words]) => {
    const [first] = words;
    return first === undefined || standingOf(words) === 'no' || standing.held.has(key) ? [] : [first.number];
  });
  const told = useRecords(wanted);
  const records = (told.answer ?? []).filter(({ picture }) => picture === null);
  const objects = [...documents.all('objects')]
    .filter(([, { picture }]) => !picture)
    .sort(([, a], [, b]) => (a.number < b.number ? -1 : 1));
  if (records.length === 0 && objects.length === 0 && !told.asking) {
    return (
      <p className="cap co-empty">
        Everything on the checklist, and everything wanted from the collection, has a picture.
      </p>
    );
  }
  return (
    <div className="co-list">
      <Trouble told={told} />
      {objects.length === 0 ? null : (
        <section className="co-group" aria-label="On the checklist">
          <h2>
            On the checklist <span className="co-number">{objects.length}</span>
          </h2>
          <ul>
            {objects.map(([id, object]) => (
              <ObjectRow key={id} id={id} object={object} />
            ))}
          </ul>
        </section>
      )}
      {records.length === 0 ? null : (
        <section className="co-group" aria-label="Wanted from the collection">
          <h2>
            Wanted from the collection <span className="co-number">{records.length}</span>
          </h2>
          <ul>
            {records.map((record) => (
              <SaidRow key={record.number} record={record} standing={standing} photographed={told.again} />
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

function ObjectRow({ id, object }: { readonly id: string; readonly object: MuseumObject }) {
  const { number, title, dateText, medium, dimensionsText } = object;
  return (
    <li className="co-row">
      <span className="co-no-picture t1">not photographed</span>
      <div>
        <h3 className="co-title">{title || number}</h3>
        <p className="t1 co-facts">{[number, dateText, medium, dimensionsText].filter(Boolean).join('; ')}</p>
      </div>
      <PhotographIt id={id} title={title || number} />
    </li>
  );
}
