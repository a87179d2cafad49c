/**
 * One thing brought in by hand, made for a phone in the store or a shop: its photograph, rough size, price, number, and
 * what will be done to it, straight onto the layout floor. What fails keeps everything that was typed.
 */
import * as commands from '@enfilade/shared/commands';
import { pieceIdOf } from '@enfilade/shared/schema';
import { mayBringIn } from '@enfilade/shared/seats';
import { type FormEvent, useState } from 'react';
import { act } from '../cards/acting.ts';
import { usePreferences } from '../preferences.ts';
import { choose, Store, useStore } from '../selection.ts';
import { todayIso } from '../sheets/waiting-days.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { go } from '../view-address.ts';
import { spotOnLayout } from './layout-spot.ts';
import { OneThingFields } from './one-thing-fields.tsx';
import { NOTHING_TYPED, nextProvisional, recordFrom, type Troubles, type Typed, troublesOf } from './one-thing-form.ts';
import { PhoneLink } from './phone-link.tsx';
import { Photograph } from './photograph.tsx';
import { SENDING_MS } from './photograph-it.tsx';
import './one-thing.css';

/** Kept while another page is looked at. */
const typedNow = new Store<Typed>(NOTHING_TYPED);
const photograph = new Store<File | null>(null);

export function OneThing() {
  const show = useShow();
  const { unit } = usePreferences();
  const typed = useStore(typedNow);
  const file = useStore(photograph);
  useRoots('objects');
  const [troubles, setTroubles] = useState<Troubles>({});
  const [said, setSaid] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const [last, setLast] = useState<{ id: string; title: string; laid: boolean } | null>(null);
  const { person } = show.me;
  if (!mayBringIn(person.role)) {
    return <p className="one-thing cap">Things are brought in by lead, curator and registrar.</p>;
  }
  const offered = nextProvisional(show.documents, new Date().getFullYear());
  const number = typed.number.trim() || offered;
  const mayLay = show.may('hang');

  const bringIn = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const found = troublesOf(typed, number, show.documents, unit);
    setTroubles(found);
    setLast(null);
    const [first] = Object.keys(found);
    if (first !== undefined) {
      setSaid('Not brought in yet: see what is wanting above.');
      document.getElementById(`one-thing-${first}`)?.focus();
      return;
    }
    setBusy(true);
    setSaid(file === null ? null : 'Sending the photograph…');
    try {
      const sent = file === null ? null : await show.pictures.send(file, AbortSignal.timeout(SENDING_MS));
      if (sent !== null && !('sha256' in sent)) return setSaid(`${sent.what} What you typed is kept here.`);
      const provisional = number === offered;
      const going = { number, provisional, unit, by: person.name, on: todayIso(), picture: sent?.sha256 ?? null };
      const record = recordFrom(typed, going);
      const added = commands.addObjects(show.documents, [record]);
      const [id = ''] = added.ids;
      const laid = mayLay && typed.onLayout;
      const spot = spotOnLayout(show.judgements, record.object.measured ?? null);
      const lay = laid ? commands.place(show.documents, new Map([[pieceIdOf(id, 1), spot]])).changes : [];
      const { title } = record.object;
      const made = { name: `bring in ${title}`, changes: [...added.changes, ...lay] };
      if (!act(show, made, `${title} is in`)) {
        return setSaid('It cannot be written just now. What you typed is kept here; press again.');
      }
      typedNow.set({ ...NOTHING_TYPED, source: typed.source, onLayout: typed.onLayout });
      photograph.set(null);
      setLast({ id, title, laid });
      setSaid(null);
    } catch {
      setSaid('The photograph did not arrive. What you typed is kept here; press again when the connection is back.');
    } finally {
      setBusy(false);
    }
  };
  return (
    <form className="one-thing" noValidate onSubmit={(event) => void bringIn(event)}>
      <h1>One thing</h1>
      <p className="cap">Found in the store or in a shop: as much as you know of it now. All of it can be corrected.</p>
      {last === null ? null : (
        // On a phone the press was far below: what came of it is brought into sight.
        <p className="one-done" role="status" ref={intoSight} key={last.id}>
          {last.title} is in{last.laid ? ', on the layout floor' : ', unplaced'}.{' '}
          <button
            type="button"
            onClick={() => {
              go({ sheet: 'layout' });
              choose([pieceIdOf(last.id, 1)]);
            }}
          >
            see it
          </button>
        </p>
      )}
      <Photograph file={file} take={photograph.set} />
      <OneThingFields
        typed={typed}
        set={(change) => {
          typedNow.set({ ...typedNow.get(), ...change });
          setTroubles({});
          setSaid(null);
        }}
        troubles={troubles}
        offered={offered}
        mayLay={mayLay}
      />
      {said === null ? null : (
        <p className="one-said" role="alert">
          {said}
        </p>
      )}
      <button type="submit" className="act main one-go" disabled={busy}>
        {busy ? 'Bringing it in…' : 'Bring it in'}
      </button>
      <PhoneLink />
    </form>
  );
}

function intoSight(element: HTMLElement | null): void {
  element?.scrollIntoView({ block: 'center' });
}

export default OneThing;
