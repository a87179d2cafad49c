/** One seat: its person, role and end; changed or taken back after one more press. */
import { maySeat, ROLES, type Role } from '@enfilade/shared/seats';
import type { Invited, SeatEntry } from '@enfilade/shared/seats-page';
import { useEffect, useRef, useState } from 'react';
import { dayText } from '../cards/day-text.ts';
import { say } from '../shell/live-region.tsx';
import { useShow } from '../sync/hooks.ts';
import { type Asked, askOf } from './seat-requests.ts';

interface SeatRowProps {
  readonly entry: SeatEntry;
  readonly take: (asked: Asked<readonly SeatEntry[]>) => boolean;
  readonly takeLink: (asked: Asked<Invited>) => boolean;
}

type Asking =
  | { readonly kind: 'take back' }
  | { readonly kind: 'role'; readonly role: Role }
  | { readonly kind: 'link' };

export function SeatRow({ entry, take, takeLink }: SeatRowProps) {
  const { base, me } = useShow();
  const [asking, setAsking] = useState<Asking | null>(null);
  const { seatId, person, until, by, devices } = entry;
  const own = person.id === me.person.id;
  const mine = !own && maySeat(me.person.role, person.role);
  const over = until !== null && Date.parse(until) <= Date.now();

  const doIt = async (): Promise<void> => {
    if (asking === null) return;
    setAsking(null);
    if (asking.kind === 'link') {
      takeLink(await askOf<Invited>(base, 'new-link', { seatId }));
      return;
    }
    const [act, body, said] =
      asking.kind === 'role'
        ? ['change-role', { seatId, role: asking.role }, `${person.name} is ${asking.role} now.`]
        : ['take-back', { seatId }, `The seat of ${person.name} is taken back.`];
    if (take(await askOf<readonly SeatEntry[]>(base, act as string, body))) say(said as string);
  };
  return (
    <>
      <tr>
        <th scope="row">
          {person.name}
          {own ? <i className="it"> you</i> : null}
        </th>
        <td>
          {mine ? (
            <select
              className="sheet-words seats-role"
              aria-label={`Role of ${person.name}`}
              value={person.role}
              onChange={(event) => setAsking({ kind: 'role', role: event.target.value as Role })}
            >
              {ROLES.filter((role) => maySeat(me.person.role, role)).map((role) => (
                <option key={role}>{role}</option>
              ))}
            </select>
          ) : (
            person.role
          )}
        </td>
        <td>
          {until === null ? 'no end' : over ? `ended ${dayText(until)}` : `until ${dayText(until)}`}
          {by === '' ? null : <span className="seats-by t1">given by {by}</span>}
        </td>
        <td>{devices === 0 ? 'not yet' : devices === 1 ? 'once' : `${devices} times`}</td>
        <td>
          {mine ? (
            <span className="seats-commands">
              <button
                type="button"
                aria-label={`new link for ${person.name}`}
                onClick={() => setAsking({ kind: 'link' })}
              >
                new link
              </button>
              <button
                type="button"
                aria-label={`take back the seat of ${person.name}`}
                onClick={() => setAsking({ kind: 'take back' })}
              >
                take back
              </button>
            </span>
          ) : null}
        </td>
      </tr>
      {asking === null ? null : (
        <tr>
          <td colSpan={5}>
            <Sure asking={asking} name={person.name} doIt={() => void doIt()} leave={() => setAsking(null)} />
          </td>
        </tr>
      )}
    </>
  );
}

function Sure(props: { asking: Asking; name: string; doIt: () => void; leave: () => void }) {
  const { asking, name, doIt, leave } = props;
  const first = useRef<HTMLButtonElement>(null);
  const { words, press } = wordsOf(asking, name);
  useEffect(() => first.current?.focus(), []);
  return (
    <fieldset
      className="seats-sure"
      aria-label={words}
      onKeyDown={(event) => {
        if (event.key === 'Escape') leave();
      }}
    >
      <p>{words}</p>
      <p className="seats-commands">
        <button ref={first} type="button" className="act" onClick={doIt}>
          {press}
        </button>
        <button type="button" onClick={leave}>
          Leave it
        </button>
      </p>
    </fieldset>
  );
}

function wordsOf(asking: Asking, name: string): { words: string; press: string } {
  switch (asking.kind) {
    case 'take back':
      return {
        words: `${name}’s page closes at once, on every device, and the link opens nothing any more.`,
        press: 'Take the seat back',
      };
    case 'role':
      return {
        words: `${name} becomes ${asking.role}. Their page closes at once and is opened anew; what they had not sent yet goes.`,
        press: `Make ${name} ${asking.role}`,
      };
    case 'link':
      return {
        words: `The old link opens nothing any more. Devices that ${name} has opened it on stay in.`,
        press: 'Make a new link',
      };
  }
}
