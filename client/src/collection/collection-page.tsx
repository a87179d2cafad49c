/** The museum's whole collection beside the show: browsed, spoken of, photographed and fetched. */
import { mayBringIn, maySeeStorage } from '@enfilade/shared/seats';
import { useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { Alike } from './alike.tsx';
import { BroughtIn } from './brought-in.tsx';
import { Browse } from './browse.tsx';
import { type CollectionView, collectionAddress } from './collection-address.ts';
import { PullList } from './pull-list.tsx';
import { SaidList } from './said-list.tsx';
import { useStanding } from './saying.tsx';
import { ToPhotograph } from './to-photograph.tsx';
import '../sheets/bring-in.css';
import './collection.css';

export function CollectionPage({ view }: { readonly view: CollectionView }) {
  const { me } = useShow();
  const { words } = useStanding();
  const parts = [
    ['browse', 'Browse'],
    ['said', words.size === 0 ? 'What was said' : `What was said ${words.size}`],
    ['to-photograph', 'To be photographed'],
    ...(maySeeStorage(me.person.role) ? ([['pull-list', 'Pull list']] as const) : []),
    ...(mayBringIn(me.person.role) ? ([['brought-in', 'Brought in']] as const) : []),
  ] as const;
  return (
    <div className="collection">
      <header className="co-head">
        <h1>The collection</h1>
        <nav aria-label="Parts of the collection">
          {parts.map(([part, name]) => (
            <a
              key={part}
              href={toAddress({ sheet: 'collection', part })}
              aria-current={view.part === part ? 'page' : undefined}
            >
              {name}
            </a>
          ))}
        </nav>
      </header>
      {view.part === 'browse' ? <Browse /> : null}
      {view.part === 'said' ? <SaidList /> : null}
      {view.part === 'to-photograph' ? <ToPhotograph /> : null}
      {view.part === 'pull-list' ? <PullList /> : null}
      {view.part === 'brought-in' ? <BroughtIn /> : null}
      {'of' in view ? <Alike view={view} key={collectionAddress(view)} /> : null}
    </div>
  );
}

export default CollectionPage;
