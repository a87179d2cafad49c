/** What of the collection looks like a chosen thing, or answers it though unlike. */
import type { CollectionLike } from '@enfilade/shared/collection';
import { toAddress } from '../view-address.ts';
import { useAsked } from './asking.ts';
import type { CollectionView } from './collection-address.ts';
import { useStanding } from './saying.tsx';
import { Thing, ThingPicture } from './thing.tsx';
import { Trouble } from './trouble.tsx';

type AlikeView = Extract<CollectionView, { readonly of: string }>;

export function Alike({ view }: { readonly view: AlikeView }) {
  const { part, of, id } = view;
  const standing = useStanding();
  const by = part === 'echo' ? 'echo' : 'likeness';
  const told = useAsked<CollectionLike>(`/like?by=${by}&${of}=${encodeURIComponent(id)}`);
  const { answer } = told;
  const other = { sheet: 'collection', part: part === 'echo' ? 'like' : 'echo', of, id } as const;
  return (
    <div className="co-browse">
      <aside className="co-filters" aria-label="Looked from">
        {answer === null ? null : (
          <>
            <ThingPicture record={answer.of} longestPx={200} />
            <h2>{answer.of.title}</h2>
            <p className="t1">{[answer.of.number, answer.of.date, answer.of.medium].filter(Boolean).join('; ')}</p>
          </>
        )}
        <p>
          <a href={toAddress(other)}>{part === 'echo' ? 'what is like it instead' : 'what echoes it instead'}</a>
        </p>
        <p>
          <a href={toAddress({ sheet: 'collection', part: 'browse' })}>back to browsing</a>
        </p>
      </aside>
      <section className="co-found" aria-label={part === 'echo' ? 'Echoes' : 'Like it'} aria-busy={told.asking}>
        <h2 className="co-count" aria-live="polite">
          {headOf(answer, part, told.asking)}
        </h2>
        <Trouble told={told} />
        <ul className="co-things">
          {answer?.found.map(({ record, words }) => (
            <Thing key={record.number} record={record} standing={standing} why={words} />
          ))}
        </ul>
      </section>
    </div>
  );
}

function headOf(answer: CollectionLike | null, part: 'like' | 'echo', asking: boolean): string {
  if (asking || answer === null) return 'Looking…';
  const { of, found } = answer;
  if (found.length === 0) {
    return part === 'echo'
      ? `Nothing that is unlike ${of.title} answers it`
      : `Nothing with a picture is like ${of.title}`;
  }
  return part === 'echo'
    ? `${found.length} unlike things that answer ${of.title}`
    : `${found.length} like ${of.title}, the nearest first`;
}
