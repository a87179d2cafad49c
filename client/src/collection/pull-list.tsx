/** What is to be fetched from storage, by place, as a paper: only for seats that may see storage places. */
import type { PullList as Lines, PullLine } from '@enfilade/shared/collection';
import { DEFAULT_SETTINGS } from '@enfilade/shared/schema';
import { maySeeStorage } from '@enfilade/shared/seats';
import { momentText } from '../sheets/vignette-words.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { useAsked } from './asking.ts';
import { Trouble } from './trouble.tsx';

export function PullList() {
  const { me, judgements } = useShow();
  const version = useRoots('collectionWords', 'objects');
  const may = maySeeStorage(me.person.role);
  const told = useAsked<Lines>(may ? '/pull-list' : null, version);
  if (!may) {
    return <p className="cap co-empty">Storage places are told to lead, curator, registrar and preparator alone.</p>;
  }
  const lines = told.answer ?? [];
  return (
    <div className="co-pull">
      <p className="co-commands">
        <button type="button" className="act main" disabled={lines.length === 0} onClick={() => print()}>
          Print
        </button>
      </p>
      <Trouble told={told} />
      <article className="co-paper" aria-label="Pull list">
        <header>
          <h2>Pull list</h2>
          <p className="t1">
            {judgements.setting('title') || DEFAULT_SETTINGS.title}, {judgements.setting('museum')};{' '}
            {momentText(new Date())}. Not for every seat: do not leave it lying.
          </p>
        </header>
        {lines.length === 0 ? (
          <p className="cap">
            {told.answer === null ? 'Looking…' : 'Nothing of the collection is on the checklist or has a yes.'}
          </p>
        ) : (
          storesOf(lines).map(([store, own]) => (
            <section key={store} aria-label={store}>
              <h3>{store}</h3>
              <table>
                <thead>
                  <tr>
                    <th scope="col">Place</th>
                    <th scope="col">Number</th>
                    <th scope="col">What</th>
                    <th scope="col">Size</th>
                    <th scope="col">Why</th>
                    <th scope="col">Pulled</th>
                  </tr>
                </thead>
                <tbody>
                  {own.map((line) => (
                    <Line key={line.record.number} line={line} store={store} />
                  ))}
                </tbody>
              </table>
            </section>
          ))
        )}
      </article>
    </div>
  );
}

function Line({ line: { record, why }, store }: { readonly line: PullLine; readonly store: string }) {
  return (
    <tr>
      <td>{record.storage.slice(store.length).replace(/^[,\s]+/, '') || store}</td>
      <td className="nw">{record.number}</td>
      <th scope="row">{record.title}</th>
      <td>{record.dimensions || <span className="unk">not known</span>}</td>
      <td>{why === 'yes' ? 'a yes' : why}</td>
      <td>
        <span className="co-box" role="img" aria-label="not ticked" />
      </td>
    </tr>
  );
}

/** Lines by store, the part of a place before its first comma; both in the order they came. */
function storesOf(lines: Lines): [store: string, lines: PullLine[]][] {
  const stores = new Map<string, PullLine[]>();
  for (const line of lines) {
    const store = line.record.storage.split(',')[0] || 'Place not known';
    stores.set(store, [...(stores.get(store) ?? []), line]);
  }
  return [...stores];
}
