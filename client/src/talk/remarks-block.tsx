/** The remarks about one thing, wherever that thing is shown: open ones, settled ones folded away, a new one. */
import { wordOf } from '@enfilade/shared/proposals';
import { aboutKey, isUnread, type RemarkThread, remark, sameAbout, threadsOf } from '@enfilade/shared/remarks';
import type { RemarkAbout } from '@enfilade/shared/talk';
import { type ReactNode, useState } from 'react';
import { act } from '../cards/acting.ts';
import { useHang, useRoots } from '../sync/hooks.ts';
import { RemarkForm } from './remark-form.tsx';
import { openRemark } from './remark-open.ts';
import { Thread } from './remark-thread.tsx';
import './remarks.css';

export function RemarksBlock({
  about,
  what,
  command = 'remark…',
  also = () => false,
  headOf = () => null,
}: {
  readonly about: RemarkAbout;
  /** 'this wall', 'the oil view': what is remarked on. */
  readonly what: string;
  /** The words that open the form, where several blocks stand in one column. */
  readonly command?: string;
  /** Others that belong here: spots on the wall that is shown. */
  readonly also?: (about: RemarkAbout) => boolean;
  /** Stands over a remark whose thing the block's own words do not name. */
  readonly headOf?: (about: RemarkAbout) => ReactNode;
}) {
  const show = useHang();
  useRoots('remarks', 'readMarks', 'people');
  const [writing, setWriting] = useState(false);
  const threads = threadsOf(show.documents).filter(
    ({ remark: said }) => sameAbout(said.about, about) || also(said.about),
  );
  const open = threads.filter(({ remark: said }) => !said.settled);
  const settled = threads.filter(({ remark: said }) => said.settled);
  const asked = openRemark.get();
  const [past, setPast] = useState(settled.some(({ id }) => id === asked));
  const mayTalk = show.may('talk');
  if (threads.length === 0 && !mayTalk) return null;
  return (
    <section className="remarks" aria-label={`Remarks on ${what}`} key={`${about.kind} ${aboutKey(about)}`}>
      {threads.length === 0 ? null : (
        <p className="t1 b">
          {countText(open, settled.length)}
          {unreadText(threads.filter((thread) => isUnread(show.documents, thread, show.me.person.id)))}
        </p>
      )}
      {open.map((thread) => (
        <Thread key={thread.id} thread={thread} head={headOf(thread.remark.about)} />
      ))}
      {past
        ? settled.map((thread) => <Thread key={thread.id} thread={thread} head={headOf(thread.remark.about)} />)
        : null}
      {writing ? (
        <RemarkForm
          label={`A remark on ${what}`}
          done="say it"
          asks
          take={(text, askedOf) => {
            const said = { about, text, ...(askedOf === null ? {} : { asked: askedOf }) };
            if (act(show, remark(said, wordOf(show.me.person, new Date())), 'said')) setWriting(false);
          }}
          leave={() => setWriting(false)}
        />
      ) : null}
      <p className="remark-commands">
        {mayTalk && !writing ? (
          <button type="button" onClick={() => setWriting(true)}>
            {command}
          </button>
        ) : null}
        {settled.length === 0 ? null : (
          <button type="button" aria-expanded={past} onClick={() => setPast(!past)}>
            {settled.length} settled
          </button>
        )}
      </p>
    </section>
  );
}

function countText(open: readonly RemarkThread[], settled: number): string {
  if (open.length === 0) return settled === 1 ? 'One remark, settled' : `${settled} remarks, settled`;
  return open.length === 1 ? 'One remark' : `${open.length} remarks`;
}

function unreadText(unread: readonly RemarkThread[]): string {
  return unread.length === 0 ? '' : `, ${unread.length} not read`;
}
