/** One remark with its answers, on a card: answered, settled, reopened. */
import { wordOf } from '@enfilade/shared/proposals';
import { answer, ask, isUnread, markRead, type RemarkThread, settleRemark, takeBack } from '@enfilade/shared/remarks';
import type { Remark } from '@enfilade/shared/talk';
import { useEffect, useRef, useState } from 'react';
import { act } from '../cards/acting.ts';
import { dayText } from '../cards/day-text.ts';
import { useStore } from '../selection.ts';
import { Ring } from '../shell/ring.tsx';
import { useHang, useShow } from '../sync/hooks.ts';
import { RemarkForm } from './remark-form.tsx';
import { openRemark } from './remark-open.ts';
import { whenText } from './remark-words.ts';

/** Long enough to have been seen, ms. */
const READ_MS = 1200;

export function Thread({
  thread,
  head,
  listed = false,
}: {
  readonly thread: RemarkThread;
  readonly head?: React.ReactNode;
  /** In the list of all: one goes from there to where it stands. */
  readonly listed?: boolean;
}) {
  // What is said belongs to the show, whatever is laid over its hang.
  const show = useHang();
  const { me } = show;
  const toBeSeen = useStore(openRemark);
  const [answering, setAnswering] = useState(false);
  const [asking, setAsking] = useState(false);
  const card = useRef<HTMLElement>(null);
  const unread = isUnread(show.documents, thread, me.person.id);
  const mayTalk = show.may('talk');
  const { id, remark, answers, lastAt } = thread;

  useEffect(() => {
    if (toBeSeen !== id || listed) return;
    openRemark.set(null);
    card.current?.scrollIntoView({ block: 'nearest' });
    card.current?.focus({ preventScroll: true });
  }, [toBeSeen, id, listed]);
  useEffect(() => {
    if (!unread || !mayTalk) return;
    const timer = setTimeout(() => show.note(markRead(me.person.id, id, lastAt)), READ_MS);
    return () => clearTimeout(timer);
  }, [unread, mayTalk, show, me.person.id, id, lastAt]);

  const word = () => wordOf(me.person, new Date());
  return (
    <article
      ref={card}
      className={`card remark-card${unread ? ' remark-unread' : ''}`}
      tabIndex={-1}
      aria-label={`Remark of ${remark.name}`}
    >
      {head}
      <Said said={remark} />
      {remark.asked ? (
        <p className="t1">
          {thread.waitsForAnswer ? 'Asks ' : 'Asked '}
          <b className="b">{remark.asked.name}</b>
          {remark.asked.byDay ? `, by ${dayText(remark.asked.byDay)}` : ''}
        </p>
      ) : null}
      {answers.map((said) => (
        <Said key={said.id} said={said} />
      ))}
      {remark.settled ? (
        <p className="t1">
          Settled by {remark.settled.name}, {whenText(remark.settled.at)}
        </p>
      ) : null}
      {answering ? (
        <RemarkForm
          label="Answer"
          done="answer"
          take={(text) => {
            if (act(show, () => answer(show.documents, id, text, word()), 'answered')) setAnswering(false);
          }}
          leave={() => setAnswering(false)}
        />
      ) : null}
      {asking ? <AskForm thread={thread} leave={() => setAsking(false)} /> : null}
      {mayTalk && !answering && !asking ? (
        <p className="remark-commands">
          {remark.settled ? (
            <button type="button" onClick={() => act(show, settleRemark(id, null), 'reopened')}>
              reopen
            </button>
          ) : (
            <>
              <button type="button" onClick={() => setAnswering(true)}>
                answer
              </button>
              <button type="button" onClick={() => act(show, settleRemark(id, word()), 'settled')}>
                settled
              </button>
              <button type="button" onClick={() => setAsking(true)}>
                ask…
              </button>
            </>
          )}
          {remark.by === me.person.id && answers.length === 0 ? (
            <button type="button" onClick={() => act(show, takeBack(id), 'taken back')}>
              take back
            </button>
          ) : null}
        </p>
      ) : null}
    </article>
  );
}

function Said({ said }: { readonly said: Remark }) {
  const { presence } = useShow();
  return (
    <div className="remark-said">
      <Ring name={said.name} pattern={presence.ringOf(said.by)} radiusPx={9.5} />
      <div>
        <p className="t1">
          {said.name}, <time dateTime={said.at}>{whenText(said.at)}</time>
        </p>
        <p className="remark-text">{said.text}</p>
      </div>
    </div>
  );
}

/** Asking somebody after the fact: whom, and by when. */
function AskForm({ thread, leave }: { readonly thread: RemarkThread; readonly leave: () => void }) {
  const show = useHang();
  const people = [...show.documents.all('people')].filter(([id, { gone }]) => id !== show.me.person.id && !gone);
  const [personId, setPersonId] = useState(thread.remark.asked?.personId ?? people[0]?.[0] ?? '');
  const [byDay, setByDay] = useState(thread.remark.asked?.byDay ?? '');
  const person = show.documents.get('people', personId);
  return (
    <form
      className="remark-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (person === undefined) return;
        const asked = { personId, name: person.name, ...(byDay === '' ? {} : { byDay }) };
        if (act(show, ask(thread.id, asked), `${person.name} is asked`)) leave();
      }}
    >
      <div className="remark-ask">
        <label>
          Ask{' '}
          <select value={personId} onChange={(event) => setPersonId(event.target.value)}>
            {people.map(([id, { name, role }]) => (
              <option key={id} value={id}>
                {name}, {role}
              </option>
            ))}
          </select>
        </label>
        <label>
          by <input type="date" value={byDay} onChange={(event) => setByDay(event.target.value)} />
        </label>
      </div>
      <p className="remark-commands">
        <button type="submit" disabled={person === undefined}>
          ask
        </button>
        {thread.remark.asked ? (
          <button
            type="button"
            onClick={() => {
              if (act(show, ask(thread.id, null), 'nobody is asked')) leave();
            }}
          >
            ask nobody
          </button>
        ) : null}
        <button type="button" onClick={leave}>
          leave it
        </button>
      </p>
    </form>
  );
}
