/** Every remark of the show in one list: what is asked of me, what I have not read, what is settled. */
import { isUnread, type RemarkThread, threadsOf } from '@enfilade/shared/remarks';
import { useState } from 'react';
import { usePreferences } from '../preferences.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { goToRemark } from '../talk/go-to-remark.ts';
import { Thread } from '../talk/remark-thread.tsx';
import { aboutText, wayTo } from '../talk/remark-words.ts';
import '../talk/remarks.css';
import './talk-pages.css';

const WAYS = ['open', 'asked of me', 'not read', 'settled', 'all'] as const;
type Way = (typeof WAYS)[number];

export function Remarks() {
  const show = useShow();
  useRoots('remarks', 'readMarks', 'people', 'objects', 'vignettes', 'rooms', 'deck', 'proposals', 'places');
  const [way, setWay] = useState<Way>('open');
  const { documents, me } = show;
  const threads = threadsOf(documents);
  const holds: Record<Way, (thread: RemarkThread) => boolean> = {
    open: ({ remark }) => !remark.settled,
    'asked of me': ({ remark, waitsForAnswer }) => waitsForAnswer && remark.asked?.personId === me.person.id,
    'not read': (thread) => isUnread(documents, thread, me.person.id),
    settled: ({ remark }) => Boolean(remark.settled),
    all: () => true,
  };
  const listed = threads.filter(holds[way]);
  return (
    <div className="talk-page">
      <header className="talk-head">
        <h1>Remarks</h1>
        <nav aria-label="Which remarks">
          {WAYS.map((name) => (
            <button
              key={name}
              type="button"
              className={name === way ? 'cmd on' : 'cmd'}
              aria-pressed={name === way}
              onClick={() => setWay(name)}
            >
              {name} {threads.filter(holds[name]).length}
            </button>
          ))}
        </nav>
      </header>
      {threads.length === 0 ? (
        <p className="cap">
          Nobody has remarked on anything yet. A remark is made where its thing is: on a work’s card, beside a wall, a
          vignette, a paint or a proposal.
        </p>
      ) : listed.length === 0 ? (
        <p className="cap">None.</p>
      ) : (
        <ul className="remark-list">
          {listed.map((thread) => (
            <li key={thread.id}>
              <Thread thread={thread} head={<AboutLine thread={thread} />} listed />
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** What the remark is about, and the way there. */
function AboutLine({ thread }: { readonly thread: RemarkThread }) {
  const { judgements } = useShow();
  const { unit } = usePreferences();
  const { about } = thread.remark;
  const way = wayTo(judgements, about);
  return (
    <p className="t1 remark-about">
      <span className="it">{aboutText(judgements, about, unit)}</span>
      {way === null ? null : (
        <button type="button" onClick={() => goToRemark(judgements, thread.id, about)}>
          go there
        </button>
      )}
    </p>
  );
}

export default Remarks;
