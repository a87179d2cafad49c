/** What goes into the collection while it is sent, what is in when that ends or stops, and the way back. */
import { useState } from 'react';
import { backText } from '../collection/back-text.ts';
import { say } from '../shell/live-region.tsx';
import { useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import type { Collected } from '../workers/send-to-collection.ts';
import { InkedRule } from './inked-rule.tsx';
import { RefusedPictures } from './refused-pictures.tsx';
import { timeLeftText } from './sending.ts';
import { StaysOut } from './stays-out.tsx';
import type { Bringing } from './use-bringing.ts';
import { type Collecting, takeImportBack } from './use-collecting.ts';

interface CollectionDoneProps {
  readonly collected: Collected;
  readonly collecting: Collecting;
  readonly bringing: Bringing;
}

export function CollectionDone({ collected, collecting, bringing }: CollectionDoneProps) {
  const { done, of, ended, added, updated, same, secondsLeft } = collected;
  const [now, all] = [done, of].map((n) => n.toLocaleString('en-GB'));
  const inNow = added + updated + same;
  const out = [...(collecting.collection?.out ?? []), ...collected.refused];
  const outInAll = (collecting.collection?.outInAll ?? 0) + collected.refusedInAll;
  const what = collecting.collection === null ? 'photograph' : 'row';
  if (ended === 'no') {
    return (
      <section className="bi-collecting">
        <h1 className="bi-big">Bringing it into the collection</h1>
        <p className="t1" role="status">
          {now} of {all} {what}s are in; {timeLeftText(secondsLeft)}. Others go on working meanwhile, and so can you: it
          goes on while another page of the show is looked at.
        </p>
        <InkedRule label="Rows that are in" done={done} of={of} />
        <p className="bi-commands">
          <button type="button" className="act" onClick={collecting.stop}>
            Stop
          </button>
        </p>
      </section>
    );
  }
  return (
    <section className="bi-collecting">
      <h1 className="bi-big" aria-live="polite">
        {ended === 'all'
          ? `${inNow.toLocaleString('en-GB')} ${what}${inNow === 1 ? ' is' : 's are'} in the collection`
          : `Stopped: ${now} of ${all} ${what}s are in`}
      </h1>
      <p className="cap">
        {added.toLocaleString('en-GB')} new, {updated.toLocaleString('en-GB')} brought up to date,{' '}
        {same.toLocaleString('en-GB')} that said nothing new.
        {ended === 'broken' ? ` ${collected.what}` : ''}
      </p>
      <Ways collected={collected} collecting={collecting} bringing={bringing} />
      <RefusedPictures refused={collecting.refusedPictures} />
      <StaysOut rows={out} inAll={outInAll} />
    </section>
  );
}

function Ways({ collected, collecting, bringing }: CollectionDoneProps) {
  const show = useShow();
  const [said, setSaid] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const { id, ended, added, updated } = collected;
  const takeBack = async (): Promise<void> => {
    if (id === null) return;
    setBusy(true);
    const told = await takeImportBack(show.base, id, (_, left) =>
      setSaid(`Taking it back: ${left.toLocaleString('en-GB')} left.`),
    );
    setBusy(false);
    if ('what' in told) return setSaid(told.what);
    const text = backText(bringing.fileName, told);
    say(text);
    if (told.stay === 0) bringing.begin();
    else setSaid(text);
  };
  return (
    <>
      <p className="bi-commands">
        <a className="act main" href={toAddress({ sheet: 'collection', part: 'browse' })}>
          Look at the collection
        </a>
        {ended === 'all' ? null : (
          <button type="button" className="act" disabled={busy} onClick={collecting.goOn}>
            Go on with the rest
          </button>
        )}
        <button type="button" className="act" disabled={busy} onClick={bringing.begin}>
          Bring in more
        </button>
        <button
          type="button"
          className="act"
          disabled={busy || id === null || added + updated === 0}
          onClick={() => void takeBack()}
        >
          Take it back
        </button>
      </p>
      {said === null ? null : (
        <p className="cap" role="status">
          {said}
        </p>
      )}
    </>
  );
}
