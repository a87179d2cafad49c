/** Browsing the collection: by words, kind, years, with or without a picture, and by what was not shown before. */
import {
  COLLECTION_COUNTED,
  type CollectionAbout,
  type CollectionRecord,
  type CollectionPage as Found,
} from '@enfilade/shared/collection';
import { useEffect, useState } from 'react';
import { Store, useStore } from '../selection.ts';
import { useAsked } from './asking.ts';
import { IntoCollection } from './brought-in.tsx';
import { FilterFields, type Filters } from './filter-fields.tsx';
import { useStanding } from './saying.tsx';
import { Thing } from './thing.tsx';
import { Trouble } from './trouble.tsx';

const PAGE = 60;

/** Kept while the page is left for what looks like a thing, and come back to. */
const asked = new Store<Filters>({ words: '', type: '', from: '', to: '', picture: 'with', shown: '' });

export function Browse() {
  const filters = useStore(asked);
  const standing = useStanding();
  const about = useAsked<CollectionAbout>('/about');
  const query = queryOf(filters);
  const [offset, setOffset] = useState(0);
  const path = `?${query}&limit=${PAGE}&offset=${offset}`;
  const found = useAsked<Found>(path);
  const records = useAllPages(query, offset, found.to === path ? found.answer : null);
  const set = (change: Partial<Filters>): void => {
    setOffset(0);
    asked.set({ ...filters, ...change });
  };
  const { answer } = found;
  if (about.answer?.count === 0) {
    return (
      <div className="co-empty">
        <p className="cap">
          Nothing of the museum’s collection is here yet. Its records come in from a spreadsheet, LIDO or IIIF; then the
          artist browses them, and what is wanted goes to the checklist.
        </p>
        <p>
          <IntoCollection />
        </p>
      </div>
    );
  }
  const left = answer === null ? 0 : (answer.more ? Number.POSITIVE_INFINITY : answer.found) - records.length;
  return (
    <div className="co-browse">
      <FilterFields filters={filters} about={about.answer} set={set} />
      <section className="co-found" aria-label="Found">
        <h2 className="co-count" aria-live="polite">
          {countText(found.to === path ? answer : null, filters)}
        </h2>
        <Trouble told={found} />
        {answer !== null && records.length === 0 && !found.asking ? (
          <p className="cap">
            Nothing is known by that. Take a word away, or look among what is not photographed: that is most of the
            collection.
          </p>
        ) : null}
        <ul className="co-things">
          {records.map((record) => (
            <Thing key={record.number} record={record} standing={standing} />
          ))}
        </ul>
        {left > 0 && records.length > 0 ? (
          <button type="button" className="act" disabled={found.asking} onClick={() => setOffset(records.length)}>
            {Number.isFinite(left) ? `${Math.min(PAGE, left)} more of ${left}` : `${PAGE} more`}
          </button>
        ) : null}
      </section>
    </div>
  );
}

/** Pages one below the other as long as the same is asked. */
function useAllPages(query: string, offset: number, page: Found | null): readonly CollectionRecord[] {
  const [all, setAll] = useState<{ query: string; records: readonly CollectionRecord[] }>({ query: '', records: [] });
  useEffect(() => {
    if (page === null) return;
    setAll((known) => {
      const before = known.query === query ? known.records.slice(0, offset) : [];
      return { query, records: [...before, ...page.records] };
    });
  }, [query, offset, page]);
  return all.records;
}

function queryOf(filters: Filters): string {
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(filters)) {
    const text = value.trim();
    // Half a year typed is no year yet.
    if (text !== '' && !((name === 'from' || name === 'to') && !/^\d{3,4}$/.test(text))) query.set(name, text);
  }
  return query.toString();
}

function countText(answer: Found | null, { picture }: Filters): string {
  if (answer === null) return 'Looking…';
  const what = picture === 'with' ? 'with a picture' : picture === 'without' ? 'not photographed' : 'found';
  if (answer.more) return `More than ${COLLECTION_COUNTED.toLocaleString('en-GB')} ${what}`;
  return `${answer.found.toLocaleString('en-GB')} ${what}`;
}
